import { ringContains } from '../../../geometry/index.ts';
import type { Point, Ring } from '../../../geometry/index.ts';
import { quarterTurned } from './shape.ts';
import type { ReadWord } from './read-word.ts';

/** Numbers of pieces are as high as one another by this (old figures differ). */
const ALIKE = 0.6;
/** This share of them has a digit that nothing else is drawn like. */
const CERTAIN = 0.5;
/** More pieces than these are not numbered. */
const MOST = 60;

/** The middle of a word on the sheet. */
const middleOf = ({ box, quarters }: ReadWord): Point =>
  quarterTurned({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }, -quarters);

/**
 * The numbers 1 to n that stand once each on n pieces, one on each; null where that cannot be found in exactly one way. `pieces`: the
 * outlines of each in all its sizes.
 */
export function pieceNumbers(
  words: readonly ReadWord[],
  pieces: readonly (readonly Ring[])[],
): ReadWord[] | null {
  if (pieces.length < 2 || pieces.length > MOST) return null;
  const numbers = words.filter(({ text }) => /^[1-9]\d?$/.test(text) && Number(text) <= pieces.length);
  const on = pieces.map((rings) =>
    numbers.filter((word) => rings.some((ring) => ringContains(ring, middleOf(word)))),
  );
  // All the same way up; else each as it can be read at all.
  const ways = [0, 1, 2, 3].flatMap((quarters) =>
    numbered(on.map((list) => list.filter((word) => word.quarters === quarters))),
  );
  if (ways.length > 0) return ways.length === 1 ? ways[0]! : null;
  const turned = numbered(on);
  return turned.length === 1 ? turned[0]! : null;
}

/** With exactly one word on each piece, and those 1 to n. Where a piece has several, their height tells: one that all pieces have once. */
function numbered(on: readonly (readonly ReadWord[])[]): ReadWord[][] {
  const high = ({ box }: ReadWord): number => box.maxY - box.minY;
  const found = new Map<string, ReadWord[]>();
  for (const first of on[0]!) {
    const alike = (word: ReadWord): boolean =>
      Math.min(high(word), high(first)) >= ALIKE * Math.max(high(word), high(first));
    const lists = on.map((list) => list.filter(alike));
    if (lists.some((list) => list.length !== 1)) continue;
    const row = lists.map((list) => list[0]!);
    const once = new Set(row.map(({ text }) => text)).size === on.length;
    const certain = row.filter((word) => word.certain > 0).length;
    if (once && certain >= CERTAIN * row.length)
      found.set(row.map(({ text, quarters }) => `${text} ${quarters}`).join(' '), row);
  }
  return [...found.values()];
}
