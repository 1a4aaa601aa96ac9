import type { Level } from './piece.ts';
import type { MeasureId } from './measure/measure-id.ts';

export interface Size {
  /** As printed: `88`, `14`, `116`. Unique in its pattern; sizes are listed smallest first. */
  readonly id: string;
  readonly label: string;
}

/** The maker's table. Rows are mm per size; a null where the table is silent for that size. */
export interface SizeChart {
  readonly sizes: readonly Size[];
  /** Which waist the table means (they lie at different heights); `unsaid` makes the plan ask. */
  readonly waist: 'natural' | 'iso' | 'unsaid';
  readonly body: Readonly<Partial<Record<MeasureId, readonly (number | null)[]>>>;
  /** Finished garment girths by level, all round. */
  readonly finished: Readonly<Record<Level, readonly (number | null)[]>>;
  /** Finished lengths by the body measure they are compared with (back-waist-length …). */
  readonly finishedLengths: Readonly<Partial<Record<MeasureId, readonly (number | null)[]>>>;
  /** Where the figures come from; shown with the year. */
  readonly source?: string;
}
