import { add, cross, length, pathEnd, pathStart, perp, scale, sub, unit } from '../geometry/index.ts';
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

/** Shares of the chord within which the meeting of two tangents makes a fair curve: nearer or further and a handle would vanish or run away. */
const LEAST = 0.02;
const MOST = 1.5;

/**
 * One cubic from `p` (leaving along `out`) to `q` (arriving along `into`) that turns one way only, its handles on the way to where the two
 * tangents meet: a circle's go 0.55 of it, a larger `full` runs closer to the tangents; two give start and end their own. Where they do not meet between the ends the curve must turn both ways: handles of a third of the chord.
 */
export function round(
  p: Point,
  out: Point,
  q: Point,
  into: Point,
  full: number | readonly [number, number] = 0.6,
): Path {
  const [fullOut, fullIn] = typeof full === 'number' ? [full, full] : full;
  const chord = sub(q, p);
  const turning = cross(out, into);
  const u = cross(chord, into) / turning;
  const v = cross(out, chord) / turning;
  const size = length(chord);
  const within = (reach: number): boolean => reach > LEAST * size && reach < MOST * size;
  if (within(u) && within(v)) return bend(p, out, fullOut * u, q, into, fullIn * v);
  return bend(p, out, size / 3, q, into, size / 3);
}

/**
 * A hem from `p` to `q`, drawn left to right below the piece, square to the two edges it joins. `left` and `right` are
 * the directions in which those edges run away from the hem, upwards.
 */
export const hemBetween = (p: Point, left: Point, q: Point, right: Point): Path =>
  round(p, scale(perp(left), -1), q, scale(perp(right), -1));
