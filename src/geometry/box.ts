import { cubicCount, cubicIsStraight, cubicOf, cubicPoint } from './cubic.ts';
import type { Cubic } from './cubic.ts';
import { quadraticRoots } from './root.ts';
import type { Box, Path, Point } from './types.ts';

/** Box of points (for a cubic's four: of its hull, which holds the curve). An empty list gives an inside-out box. */
export function pointsBox(points: readonly Point[]): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const p of points) {
    if (p.x < minX) minX = p.x;
    if (p.x > maxX) maxX = p.x;
    if (p.y < minY) minY = p.y;
    if (p.y > maxY) maxY = p.y;
  }
  return { minX, minY, maxX, maxY };
}

/** Do the boxes touch, `gap` mm apart still counting? */
export const boxesTouch = (a: Box, b: Box, gap = 0): boolean =>
  a.minX - gap <= b.maxX && b.minX - gap <= a.maxX && a.minY - gap <= b.maxY && b.minY - gap <= a.maxY;

/** The box round all boxes. */
export function boxAround(boxes: readonly Box[]): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const b of boxes) {
    if (b.minX < minX) minX = b.minX;
    if (b.maxX > maxX) maxX = b.maxX;
    if (b.minY < minY) minY = b.minY;
    if (b.maxY > maxY) maxY = b.maxY;
  }
  return { minX, minY, maxX, maxY };
}

function extrema(a: number, b: number, c: number, d: number): number[] {
  return quadraticRoots(d - 3 * c + 3 * b - a, 2 * (a - 2 * b + c), b - a);
}

function cubicBox(cubic: Cubic): Box {
  const [a, b, c, d] = cubic;
  if (cubicIsStraight(cubic)) return pointsBox([a, d]);
  const turns = [...extrema(a.x, b.x, c.x, d.x), ...extrema(a.y, b.y, c.y, d.y)].filter(
    (t) => t > 0 && t < 1,
  );
  return pointsBox([a, d, ...turns.map((t) => cubicPoint(cubic, t))]);
}

/** The smallest upright box round the curve (not round its control points). */
export function pathBox(path: Path): Box {
  const boxes: Box[] = [];
  for (let i = 0; i < cubicCount(path); i++) boxes.push(cubicBox(cubicOf(path, i)));
  return boxAround(boxes);
}
