import type { Point } from './types.ts';
import { add, perp, scale, sub, unit } from './vector.ts';

/** The corners of an arrow head with its tip at `tip`, pointing along `direction`: one barb, the tip, the other barb. `half` is its half width; mm. */
export function arrowHead(tip: Point, direction: Point, long: number, half: number): [Point, Point, Point] {
  const d = unit(direction);
  const back = sub(tip, scale(d, long));
  const wide = scale(perp(d), half);
  return [add(back, wide), tip, sub(back, wide)];
}
