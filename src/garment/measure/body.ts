import type { Wearer } from '../words/tell.ts';
import type { MeasureId } from './measure-id.ts';

/** One taking of one measure. `value` is mm (degrees for shoulder-slope). `typed` keeps what the person wrote. */
export interface Reading {
  readonly value: number;
  readonly typed?: string;
  /** ISO date. */
  readonly on?: string;
  /** The side of the body it was taken on; absent where not said, or where there is but one. */
  readonly side?: 'left' | 'right';
  /** It was doubted, and whoever took it said that it is right. */
  readonly sure?: true;
}

export interface Body {
  readonly id: string;
  readonly name: string;
  readonly wearer: Wearer;
  /** How this person likes lengths shown. */
  readonly show: 'in' | 'cm';
  /** Which waist was taped. */
  readonly waist: 'natural' | 'iso' | 'unsaid';
  /** Every reading, oldest first. The value used is `bodyValue` in measure.ts. */
  readonly readings: Readonly<Partial<Record<MeasureId, readonly Reading[]>>>;
  readonly notes?: string;
}
