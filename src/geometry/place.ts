import { cubicAcceleration, cubicOf, cubicPoint, cubicVelocity } from './cubic.ts';
import { SAME_MM } from './tolerance.ts';
import type { Path, PathPlace, Point } from './types.ts';
import { cross, length, norm, sub, unit } from './vector.ts';

/** The point at a place. At t = 0 and 1 it is exactly the stored one. */
export function placePoint(path: Path, place: PathPlace): Point {
  if (place.t <= 0) return path[place.cubic * 3]!;
  if (place.t >= 1) return path[place.cubic * 3 + 3]!;
  return cubicPoint(cubicOf(path, place.cubic), place.t);
}

/**
 * Unit direction of the path at a place. Where a control point sits on its end (speed zero) it is the limit:
 * towards the next control point. Zero only on a cubic of no length.
 */
export function placeTangent(path: Path, place: PathPlace): Point {
  // Corners ask for the ends: there the direction is the handle's, nothing to work out.
  if (place.t === 0 || place.t === 1) {
    const i = place.cubic * 3 + (place.t === 0 ? 0 : 2);
    const a = path[i]!;
    const b = path[i + 1]!;
    const l = norm(b.x - a.x, b.y - a.y);
    if (3 * l > SAME_MM) return { x: (b.x - a.x) / l, y: (b.y - a.y) / l };
  }
  const c = cubicOf(path, place.cubic);
  const v = cubicVelocity(c, place.t);
  if (length(v) > SAME_MM) return unit(v);
  const here = cubicPoint(c, place.t);
  const ahead = place.t < 0.5 ? [c[1], c[2], c[3]] : [c[2], c[1], c[0]];
  for (const p of ahead) {
    const d = place.t < 0.5 ? sub(p, here) : sub(here, p);
    if (length(d) > SAME_MM) return unit(d);
  }
  return { x: 0, y: 0 };
}

/** Signed curvature in 1/mm, positive where the path bends to its left. Infinite at a cusp. */
export function placeCurvature(path: Path, place: PathPlace): number {
  const c = cubicOf(path, place.cubic);
  const v = cubicVelocity(c, place.t);
  const turning = cross(v, cubicAcceleration(c, place.t));
  return turning === 0 ? 0 : turning / length(v) ** 3;
}
