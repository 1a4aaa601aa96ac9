import { pointsBox } from '../../../geometry/index.ts';
import type { Box } from '../../../geometry/index.ts';
import { Groups } from '../groups.ts';
import { nearBoxes } from '../near-box.ts';
import type { DrawnLetter } from './letter.ts';
import { quarterTurned } from './shape.ts';

/** Letters that stand side by side, in the order in which they are read at that turn. */
export interface DrawnWord {
  readonly letters: readonly DrawnLetter[];
  /** The quarter turns that it may be read at, counter-clockwise from level: two for several letters, four for one. */
  readonly quarters: readonly number[];
}

/** Letters of one word are no further apart than this, in heights; pens write at a wider pitch … */
const BESIDE = 0.5;
const BESIDE_PEN = 0.65;
/** … may run into one another by this … */
const INTO = 0.2;
/** … stand level by this share of the lower one, and are as high as one another by this (old figures differ). */
const LEVEL = 0.5;
const ALIKE = 0.5;
const CELL_MM = 10;

/** How two letters stand beside one another on a level line, null where they do not: their gap, in heights of the higher one. */
function besideGap(a: Box, b: Box): number | null {
  const [high, other] = [a.maxY - a.minY, b.maxY - b.minY];
  const low = Math.min(high, other);
  const most = Math.max(high, other);
  if (low < ALIKE * most) return null;
  if (Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY) < LEVEL * low) return null;
  const gap = Math.max(a.minX, b.minX) - Math.min(a.maxX, b.maxX);
  return gap < -INTO * most ? null : gap / most;
}

/** The box as it lies when the sheet is turned clockwise by so many quarters. */
export function turnedBox(box: Box, quarters: number): Box {
  return pointsBox([
    quarterTurned({ x: box.minX, y: box.minY }, quarters),
    quarterTurned({ x: box.maxX, y: box.maxY }, quarters),
  ]);
}

/** Letters put together to words, level ones and upright ones: each goes with the nearer neighbour. */
export function drawnWords(letters: readonly DrawnLetter[]): DrawnWord[] {
  const boxes = [0, 1].map((quarters) => letters.map(({ box }) => turnedBox(box, quarters)));
  const near = nearBoxes(boxes[0]!, CELL_MM);
  const links: { readonly a: number; readonly b: number; readonly across: number; readonly gap: number }[] =
    [];
  const nearest = [0, 1].map(() => new Float64Array(letters.length).fill(Infinity));
  letters.forEach((letter, i) => {
    for (const k of near(i, BESIDE_PEN * letter.size)) {
      for (const across of [0, 1]) {
        const gap = besideGap(boxes[across]![i]!, boxes[across]![k]!);
        const penned = letter.rings === null && letters[k]!.rings === null;
        if (gap === null || gap > (penned ? BESIDE_PEN : BESIDE)) continue;
        nearest[across]![i] = Math.min(nearest[across]![i]!, gap);
        nearest[across]![k] = Math.min(nearest[across]![k]!, gap);
        links.push({ a: i, b: k, across, gap });
      }
    }
  });
  const groups = new Groups(letters.length);
  const across = new Uint8Array(letters.length);
  for (const link of links) {
    const other = nearest[1 - link.across]!;
    if (link.gap > Math.min(other[link.a]!, other[link.b]!)) continue;
    groups.join(link.a, link.b);
    across[link.a]! |= link.across + 1;
    across[link.b]! |= link.across + 1;
  }
  return groups
    .lists([...letters.keys()], (i) => i)
    .flatMap((list): DrawnWord[] => {
      if (list.length === 1) return [{ letters: [letters[list[0]!]!], quarters: [0, 1, 2, 3] }];
      const ways = list.reduce((all, i) => all | across[i]!, 0);
      // Level and upright at once is a block of letters that cannot be told apart.
      if (ways === 3) return [];
      const own = boxes[ways - 1]!;
      const ordered = list.toSorted((a, b) => own[a]!.minX - own[b]!.minX);
      return [{ letters: ordered.map((i) => letters[i]!), quarters: ways === 1 ? [0, 2] : [1, 3] }];
    });
}
