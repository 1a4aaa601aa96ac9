import type { FitCategory, garmentKind, Level, SourceMark } from '../garment/index.ts';

type EaseColumn = ReturnType<typeof garmentKind>['easeColumn'];

/** A published figure for ease: inches all round, from least to most. `most` null: open-ended. */
export interface EaseRow {
  readonly level: Level;
  /** The column of garments it is given for; all when absent. */
  readonly column?: EaseColumn;
  readonly least: number;
  readonly most: number | null;
  readonly source: string;
  readonly mark: SourceMark;
}

const CWU = 'Central Washington University, Costume Text, ch. 16 "Ease in Clothing"';
const BULLETINS = 'US sewing bulletins 1950 to 2000 and alteration handbooks, range';
const NM209 = 'New Mexico State University Guide C-209';
const NM228 = 'New Mexico State University Guide C-228';

/**
 * Wearing ease, inches: what a woven garment needs beyond the body to breathe, sit and reach. The first row that fits a level and
 * a garment is the one followed: where sources differ, the lowest published figure that was read in its source, because below
 * it no source lets a garment be; the more generous ones stand behind it for comparison.
 */
export const WEARING_EASE: readonly EaseRow[] = [
  { level: 'bust', least: 1.5, most: 2, source: `${CWU}, bodice`, mark: 'seen' },
  { level: 'bust', least: 3, most: 4, source: NM228, mark: 'seen' },
  { level: 'bust', least: 2.5, most: 4, source: BULLETINS, mark: 'memory' },
  { level: 'waist', column: 'upper', least: 0.75, most: 1, source: `${CWU}, dress`, mark: 'seen' },
  { level: 'waist', column: 'skirt', least: 0.5, most: 0.75, source: `${CWU}, skirt`, mark: 'seen' },
  { level: 'waist', column: 'trousers', least: 0.75, most: 1, source: `${CWU}, trousers`, mark: 'seen' },
  { level: 'waist', least: 0.5, most: 1, source: BULLETINS, mark: 'memory' },
  { level: 'hip', column: 'trousers', least: 1.5, most: 2, source: `${CWU}, trouser seat`, mark: 'seen' },
  { level: 'hip', least: 2, most: 2.75, source: CWU, mark: 'seen' },
  { level: 'hip', least: 2, most: 3, source: BULLETINS, mark: 'memory' },
  { level: 'thigh', least: 1, most: 2, source: `${CWU}; ${NM209}`, mark: 'seen' },
  { level: 'knee', least: 1, most: null, source: NM209, mark: 'seen' },
  { level: 'upper-arm', least: 1.5, most: 2, source: `${BULLETINS}, firm cloth`, mark: 'memory' },
  { level: 'wrist', least: 0.5, most: 1, source: BULLETINS, mark: 'memory' },
  { level: 'neck', least: 0.25, most: 0.5, source: BULLETINS, mark: 'memory' },
];

/** Ease added to a body length, inches. */
export const LENGTH_EASE: readonly {
  readonly measure: string;
  readonly least: number;
  readonly most: number;
  readonly source: string;
  readonly mark: SourceMark;
}[] = [
  { measure: 'back-waist-length', least: 0.25, most: 0.5, source: BULLETINS, mark: 'memory' },
  { measure: 'front-waist-length', least: 0.25, most: 0.5, source: BULLETINS, mark: 'memory' },
  { measure: 'across-back', least: 0.5, most: 1, source: BULLETINS, mark: 'memory' },
  { measure: 'across-front', least: 0, most: 0.5, source: BULLETINS, mark: 'memory' },
  { measure: 'crotch-length', least: 1, most: 2, source: BULLETINS, mark: 'memory' },
];

/** Crotch depth wants more ease on a fuller hip: 1/2 in under a 36 in hip, 1 in over 38 (NM209, seen; 3/4 between is our reading of a damaged line). */
export const CROTCH_DEPTH_EASE = {
  smallHip: 36,
  largeHip: 38,
  small: 0.5,
  between: 0.75,
  large: 1,
  source: NM209,
  mark: 'seen' as SourceMark,
};

/**
 * Fit categories: total ease over the body, inches; the trade's ease chart as reprinted in extension leaflets (memory).
 * `coat` is kept for completeness of the source; our garments are judged by `dress` or `jacket` at the bust and `lower` at the hip.
 */
export const FIT_CATEGORIES: Readonly<
  Record<
    'dress' | 'jacket' | 'coat' | 'lower',
    Readonly<Partial<Record<FitCategory, readonly [number, number | null]>>>
  >
> = {
  dress: {
    close: [0, 2.875],
    fitted: [3, 4],
    'semi-fitted': [4.125, 5],
    loose: [5.125, 8],
    'very-loose': [8, null],
  },
  jacket: {
    fitted: [3.75, 4.25],
    'semi-fitted': [4.375, 5.75],
    loose: [5.875, 10],
    'very-loose': [10, null],
  },
  coat: { fitted: [5.25, 6.75], 'semi-fitted': [6.875, 8], loose: [8.125, 12], 'very-loose': [12, null] },
  lower: {
    close: [0, 1.875],
    fitted: [2, 3],
    'semi-fitted': [3.125, 4],
    loose: [4.125, 6],
    'very-loose': [6, null],
  },
};
export const FIT_CATEGORIES_SOURCE = 'the trade ease chart reprinted in US extension leaflets (from memory)';

/**
 * Knits by how far they stretch (share) and how much smaller than the body a close garment is made, each way (share).
 * Classes: a stretch-pattern textbook's folded-edge test; reductions: a textbook on stretch fabrics (both memory).
 */
export const KNIT_CLASSES: readonly {
  readonly name: string;
  readonly stretch: number;
  readonly reduction: number;
}[] = [
  { name: 'stable', stretch: 0.18, reduction: 0 },
  { name: 'moderate', stretch: 0.25, reduction: 0.02 },
  { name: 'stretchy', stretch: 0.5, reduction: 0.03 },
  { name: 'very stretchy', stretch: 1, reduction: 0.05 },
];
export const KNIT_SOURCE = 'textbook classes of knits (from memory)';

/** Head girth that a neck opening must pass when the head was not measured: about 22 in (trade notes 3.5; ASTM adult women 21 1/4 to 22 1/2). Inches. */
export const HEAD_GIRTH = 22;
/** Share of a knit's stretch that may be used up in wear, at most (derived; keeps as much again for movement). */
export const MOST_USEFUL = 0.5;

/** Share of a girth that lies in front of the side lines when nothing is measured: drafting convention, middle of the range (memory). */
export const FRONT_SHARE: Readonly<Record<Level, number>> = {
  bust: 0.53,
  waist: 0.51,
  'high-hip': 0.49,
  hip: 0.475,
};
