import { add, pathEnd, pathStart, perp, scale, sub, unit } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';

/** A direction from its angle in degrees, counter-clockwise from +x. */
export function heading(degrees: number): Point {
  const a = (degrees * Math.PI) / 180;
  return { x: Math.cos(a), y: Math.sin(a) };
}

/**
 * One cubic that leaves `p` along the unit vector `out` and arrives at `q` travelling along the unit vector `into`;
 * `reachOut` and `reachIn` are the lengths of its two handles in mm.
 */
export function bend(p: Point, out: Point, reachOut: number, q: Point, into: Point, reachIn: number): Path {
  return [p, add(p, scale(out, reachOut)), sub(q, scale(into, reachIn)), q];
}

/** Direction of travel at the start of a path. */
export const startDirection = (path: Path): Point => unit(sub(path[1]!, pathStart(path)));
/** Direction of travel at the end of a path. */
export const endDirection = (path: Path): Point => unit(sub(pathEnd(path), path[path.length - 2]!));

/**
 * A hem from `p` to `q`, drawn left to right below the piece, square to the two edges it joins. `left` and `right` are
 * the directions in which those edges run away from the hem, upwards.
 */
export function hemBetween(p: Point, left: Point, q: Point, right: Point): Path {
  const third = Math.hypot(q.x - p.x, q.y - p.y) / 3;
  return bend(p, scale(perp(left), -1), third, q, scale(perp(right), -1), third);
}
