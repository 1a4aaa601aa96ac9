import { arrowHead, polylinePath } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';

/** A filled arrow head with its tip at `tip`, pointing along `direction`; mm. */
export function filledHead(tip: Point, direction: Point, size = 5): Path {
  const corners = arrowHead(tip, direction, size, size * 0.32);
  return polylinePath([...corners, corners[0]]);
}
