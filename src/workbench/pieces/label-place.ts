import type { DrawnPiece } from '../../garment/index.ts';
import { pathsRing, pointsBox, type Point } from '../../geometry/index.ts';

/** Where the name of a piece lies best: inside it, across or upright, and how large it may be there. */
export interface LabelPlace {
  readonly at: Point;
  readonly upright: boolean;
  /** The largest type that keeps inside the outline, mm. */
  readonly fit: number;
}

/** Places tried across and up. Odd, so that the middle is one of them. */
const TRIED = 11;
/** Width of a letter and height of a line of this type, in parts of its size (measured on the names of the samples). */
const LETTER = 0.5;
const LINE = 1.3;
/** Fineness of the outline the name is to keep inside, mm. */
const COARSE_MM = 2;
/** Type larger than this, mm, is not asked for: then the middle of the piece is as good as its widest place. */
const ENOUGH_MM = 60;

/** The place inside the outline where a name of so many letters may be set largest, nearest the middle among equals. */
export function labelPlace(piece: DrawnPiece, letters: number): LabelPlace {
  const outline = pathsRing(
    piece.edges.map((e) => e.path),
    COARSE_MM,
  );
  const box = pointsBox(outline);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  let best: LabelPlace = { at: middle, upright: false, fit: 0 };
  let most = -Infinity;
  for (let i = 1; i < TRIED; i++) {
    for (let k = 1; k < TRIED; k++) {
      const at = { x: box.minX + (i / TRIED) * wide, y: box.minY + (k / TRIED) * high };
      const room = { across: roomAlong(outline, at, 'x'), up: roomAlong(outline, at, 'y') };
      if (room.across === 0) continue;
      for (const upright of [false, true]) {
        const along = upright ? room.up : room.across;
        const beside = roomBeside(outline, at, upright, along);
        const fit = Math.min((2 * along) / (letters * LETTER), (2 * beside) / LINE);
        const off = Math.hypot((at.x - middle.x) / wide, (at.y - middle.y) / high);
        const worth = Math.min(fit, ENOUGH_MM) * (1 - 0.25 * off) * (upright ? 0.7 : 1);
        if (worth > most) {
          most = worth;
          best = { at, upright, fit };
        }
      }
    }
  }
  return best;
}

/** Room above and below a line of type, least of its middle and near its two ends. */
function roomBeside(outline: readonly Point[], at: Point, upright: boolean, along: number): number {
  const rooms = [-0.7, 0, 0.7].map((share) => {
    const by = share * along;
    const on = upright ? { x: at.x, y: at.y + by } : { x: at.x + by, y: at.y };
    return roomAlong(outline, on, upright ? 'x' : 'y');
  });
  return Math.min(...rooms);
}

/** How far the outline is from a place inside it, along one axis, on the nearer side; 0 outside. */
function roomAlong(outline: readonly Point[], at: Point, axis: 'x' | 'y'): number {
  const across = axis === 'x' ? 'y' : 'x';
  let before = 0;
  let nearest = Infinity;
  for (let i = 0; i < outline.length; i++) {
    const [a, b] = [outline[i]!, outline[(i + 1) % outline.length]!];
    if (a[across] > at[across] === b[across] > at[across]) continue;
    const share = (at[across] - a[across]) / (b[across] - a[across]);
    const off = a[axis] + share * (b[axis] - a[axis]) - at[axis];
    if (off < 0) before++;
    nearest = Math.min(nearest, Math.abs(off));
  }
  return before % 2 === 1 ? nearest : 0;
}
