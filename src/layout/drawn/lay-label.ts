import { pointsBox, ringContains } from '../../geometry/index.ts';
import type { Point, Ring } from '../../geometry/index.ts';
import { thinned } from '../job/cutting-outline.ts';

/** Mean width of a letter as a share of its height, with a little to spare: sans serif faces lie near 0.5. */
const LETTER = 0.56;
const LINE = 1.25;
/** Lines below the first are written so much smaller. */
export const SMALL = 0.62;
const SIZES = [26, 22, 18, 15, 12, 10, 8.5, 7] as const;
/** Several lines are not written smaller than this: their lower ones would be too small to read on the table, mm. */
const LEAST_OF_SEVERAL = 10;
/** Places tried along each side of the piece's box. */
const GRID = 14;

/** Where some lines of words stand inside a piece: their middle, the height of the first line, and 0 or 90 degrees. */
export interface Block {
  readonly at: Point;
  readonly size: number;
  readonly turn: 0 | 90;
}

/** Width and height of a block whose first line is `size` high. */
function extent(lines: readonly string[], size: number): { wide: number; high: number } {
  const widths = lines.map((text, i) => text.length * LETTER * size * (i === 0 ? 1 : SMALL));
  return { wide: Math.max(...widths), high: size * LINE * (1 + SMALL * (lines.length - 1)) };
}

/** The largest place for some lines wholly inside a ring and clear of a line (the grain); null where even the smallest letters find none. @param sizes to try, the largest first, mm */
export function placeWords(
  lines: readonly string[],
  outline: Ring,
  clear: readonly [Point, Point],
  sizes: readonly number[] = SIZES,
): Block | null {
  const ring = thinned(outline, 1);
  const box = pointsBox(ring);
  for (const size of sizes) {
    if (lines.length > 1 && size < LEAST_OF_SEVERAL) break;
    const { wide, high } = extent(lines, size);
    for (const turn of [0, 90] as const) {
      const [w, h] = turn === 0 ? [wide, high] : [high, wide];
      let best: { at: Point; off: number } | null = null;
      const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
      for (let i = 0; i <= GRID; i++) {
        for (let j = 0; j <= GRID; j++) {
          const at = {
            x: box.minX + ((box.maxX - box.minX) * i) / GRID,
            y: box.minY + ((box.maxY - box.minY) * j) / GRID,
          };
          const off = Math.hypot(at.x - middle.x, at.y - middle.y);
          if (best && off >= best.off) continue;
          if (fits(at, w + 6, h + 6, ring, clear)) best = { at, off };
        }
      }
      if (best) return { at: best.at, size, turn };
    }
  }
  return null;
}

function fits(at: Point, w: number, h: number, ring: Ring, clear: readonly [Point, Point]): boolean {
  const [x0, x1, y0, y1] = [at.x - w / 2, at.x + w / 2, at.y - h / 2, at.y + h / 2];
  if (enters(clear[0], clear[1], x0, x1, y0, y1)) return false;
  if (!ringContains(ring, at)) return false;
  // The middle lies inside and no side of the outline enters: then all of it does.
  return ring.every((p, i) => !enters(p, ring[(i + 1) % ring.length]!, x0, x1, y0, y1));
}

/** Whether a segment has a point within a box (clipped against its sides one by one: Liang and Barsky 1984). */
function enters(p: Point, q: Point, x0: number, x1: number, y0: number, y1: number): boolean {
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  let [from, to] = [0, 1];
  for (const [d, a] of [
    [-dx, p.x - x0],
    [dx, x1 - p.x],
    [-dy, p.y - y0],
    [dy, y1 - p.y],
  ] as const) {
    if (d === 0) {
      if (a < 0) return false;
      continue;
    }
    const t = a / d;
    if (d < 0) from = Math.max(from, t);
    else to = Math.min(to, t);
  }
  return from <= to;
}
