import { DIGIT_SHAPES } from './digit-shape-table.ts';
import { shapeFrom, unlikeness } from './shape.ts';
import type { Shape } from './shape.ts';

/** A letter that a shape surely is. */
export interface KnownLetter {
  readonly char: string;
  /** It may as well be a letter that some faces draw alike (`O`, `l`): only its company can tell. */
  readonly doubtful: boolean;
}

/** A shape is a letter if it is no more unlike it than this … */
const LIKE = 0.33;
/** … and everything else is more unlike it by this factor, and by this much. */
const CLEARER = 1.3;
const CLEAR_BY = 0.06;

/** What is read, and with what some faces draw it alike. */
const ALIKE: Readonly<Record<string, string>> = {
  '0': 'OoDQ',
  '1': 'lIi',
  '2': '',
  '3': '',
  '4': '',
  '5': '',
  '6': 'b',
  '7': '',
  '8': '',
  '9': 'gq',
  S: '',
  M: '',
  L: '',
  X: '',
};
/** Small letters of the same shape as the capital, which name the same size. */
const CAPITAL: Readonly<Record<string, string>> = { s: 'S', x: 'X' };

const TABLE = DIGIT_SHAPES.map(([char, rings, text]) => ({
  char: CAPITAL[char] ?? char,
  rings,
  shape: shapeFrom(text),
}));

/**
 * Which of the digits or of `S M L X` a shape is, null where that is not sure. `rings`: how many rings a filled letter has;
 * null for one of strokes, which is like whatever looks like it.
 */
export function knownLetter(shape: Shape, rings: number | null): KnownLetter | null {
  const best = new Map<string, number>();
  for (const known of TABLE) {
    if (rings !== null && known.rings !== rings) continue;
    const off = unlikeness(shape, known.shape);
    if (off < (best.get(known.char) ?? Infinity)) best.set(known.char, off);
  }
  let found: [string, number] | null = null;
  for (const [char, off] of best)
    if (ALIKE[char] !== undefined && off < LIKE && (!found || off < found[1])) found = [char, off];
  if (!found) return null;
  const [char, off] = found;
  const clear = Math.max(off * CLEARER, off + CLEAR_BY);
  let doubtful = false;
  for (const [other, its] of best) {
    if (other === char || its > clear) continue;
    if (!ALIKE[char]!.includes(other)) return null;
    doubtful = true;
  }
  return { char, doubtful };
}

/** Bare strokes, which notches and samples of lines are as well. */
const BARE = /[1Iil]/;

/** Whether a shape is like any letter that is more than a bare stroke. */
export const looksLettered = (shape: Shape, rings: number | null): boolean =>
  TABLE.some(
    (known) =>
      !BARE.test(known.char) &&
      (rings === null || known.rings === rings) &&
      unlikeness(shape, known.shape) < LIKE,
  );
