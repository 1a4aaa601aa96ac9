import type { Box } from '../../geometry/index.ts';

/** In one cell only so many are looked at. */
const NEAR = 400;

/** For each box those that may lie within `reach` mm of it: all that do, and some beyond. Cells of `cell` mm. */
export function nearBoxes(boxes: readonly Box[], cell: number): (i: number, reach: number) => number[] {
  const cells = new Map<string, number[]>();
  const range = (from: number, to: number) =>
    Array.from(
      { length: Math.floor(to / cell) - Math.floor(from / cell) + 1 },
      (_, i) => Math.floor(from / cell) + i,
    );
  const cellsOf = (box: Box, reach: number): string[] =>
    range(box.minX - reach, box.maxX + reach).flatMap((x) =>
      range(box.minY - reach, box.maxY + reach).map((y) => `${x} ${y}`),
    );
  boxes.forEach((box, i) => {
    for (const key of cellsOf(box, 0)) {
      const list = cells.get(key);
      if (!list) cells.set(key, [i]);
      else if (list.length < NEAR) list.push(i);
    }
  });
  return (i, reach) => {
    const all = new Set(cellsOf(boxes[i]!, reach).flatMap((key) => cells.get(key) ?? []));
    all.delete(i);
    return [...all];
  };
}

/** How far two boxes are apart along the farther axis, mm; 0 where they touch. */
export const boxGap = (a: Box, b: Box): number =>
  Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY, 0);
