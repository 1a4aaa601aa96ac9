import type { Garment, ParamValue, Phrase } from '../../garment/index.ts';
import type { Change } from '../follow/change.ts';

/** Chapters of the catalogue, in the order a fitter works: length first, then shoulder, then width. */
export const GROUPS = [
  'length',
  'shoulder',
  'neckline',
  'armhole',
  'bust',
  'back',
  'front and seat',
  'width',
  'sides and balance',
  'sleeve',
  'trousers',
  'darts',
] as const;
export type Group = (typeof GROUPS)[number];

/** The published bound of an amount: beyond it the alteration still goes, with a warning that says why. */
export interface Limit {
  readonly most: number;
  readonly say: Phrase;
  readonly source: string;
}

/** One thing a sewist states for an alteration. Lengths in mm, angles in degrees. `min` and `max` are the bounds of what can be typed. */
export type Param =
  | {
      readonly id: string;
      readonly name: Phrase;
      readonly kind: 'length' | 'angle';
      readonly default: number;
      readonly min: number;
      readonly max: number;
      readonly limit?: Limit;
      /** May be left empty; these words say what holds then. */
      readonly blank?: Phrase;
    }
  | {
      readonly id: string;
      readonly name: Phrase;
      readonly kind: 'share';
      readonly default: number;
      readonly min: number;
      readonly max: number;
    }
  | {
      readonly id: string;
      readonly name: Phrase;
      readonly kind: 'choice';
      readonly default: string;
      readonly choices: readonly { readonly id: string; readonly name: Phrase }[];
    }
  /** A piece, an edge or a dart of the pattern, by id. Empty: the first that fits. */
  | {
      readonly id: string;
      readonly name: Phrase;
      readonly kind: 'piece' | 'edge' | 'dart';
      readonly default: string;
    };

/** Checked values of an alteration's parameters; a blank one is absent. */
export interface Values {
  /** A number, 0 where blank. */
  readonly mm: (id: string) => number;
  /** A number, or undefined where blank. */
  readonly maybe: (id: string) => number | undefined;
  readonly word: (id: string) => string;
}

/** The garment before and after an alteration was made. */
export interface Done {
  readonly before: Garment;
  readonly after: Garment;
}

/** A catalogue entry: the same five parts in the same order in every file. */
export interface Alteration {
  // 1 what it is
  readonly id: string;
  readonly group: Group;
  /** By its trade name. */
  readonly name: Phrase;
  readonly when: Phrase;
  readonly source: string;
  // 2 parameters
  readonly params: readonly Param[];
  // 3 reach: what else changes, in words; the geometry carries it out
  readonly reach: readonly Phrase[];
  /** Which plain garment shows it best, and the amounts for the small drawing. */
  readonly shows: {
    readonly on: 'bodice' | 'plain' | 'panels' | 'skirt' | 'trousers';
    readonly params: Readonly<Record<string, ParamValue>>;
  };
  // 4 geometry: a composition of primitives on the change
  readonly make: (change: Change, values: Values) => void;
  // 5 sentence: what was asked, and where `done` says what came of it, in the counts that were really moved
  readonly sentence: (values: Values, done?: Done) => Phrase;
}
