import { add, perp, polylinePath, scale, sub, unit } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';

/** A filled arrow head with its tip at `tip`, pointing along `direction`; mm. */
export function arrowHead(tip: Point, direction: Point, size = 5): Path {
  const d = unit(direction);
  const back = sub(tip, scale(d, size));
  const wide = scale(perp(d), size * 0.32);
  return polylinePath([tip, add(back, wide), sub(back, wide), tip]);
}
