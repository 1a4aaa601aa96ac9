import type { Path, Point } from '../geometry/index.ts';

/** Handle of a quarter circle, which is then at most 2.7 ten-thousandths of the radius off (Riškus 2006). */
const QUARTER = 0.5522847498;

/** A circle as four cubics. */
export function circlePath(centre: Point, radius: number): Path {
  const k = QUARTER * radius;
  const at = (x: number, y: number): Point => ({ x: centre.x + x, y: centre.y + y });
  const r = radius;
  return [
    at(r, 0),
    at(r, k),
    at(k, r),
    at(0, r),
    at(-k, r),
    at(-r, k),
    at(-r, 0),
    at(-r, -k),
    at(-k, -r),
    at(0, -r),
    at(k, -r),
    at(r, -k),
    at(r, 0),
  ];
}
