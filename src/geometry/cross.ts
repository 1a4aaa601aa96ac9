import { boxesTouch, pointsBox } from './box.ts';
import { cubicLineRoots, cubicMeetings } from './cross-cubic.ts';
import { cubicCount, cubicOf } from './cubic.ts';
import { placePoint } from './place.ts';
import { SAME_MM } from './tolerance.ts';
import type { Path, PathPlace, Point } from './types.ts';
import { distance } from './vector.ts';

/** Parameter (counted in cubics) under which two findings at one point are the same: a crossing at a joint is found on both sides of it. */
const SAME_PLACE = 1e-3;

/**
 * Every place where two paths meet, touching included, in order along `a`. Paths that run along one another give the ends of the shared run
 * (of each cubic). Points agree within SAME_MM.
 */
export function pathIntersections(a: Path, b: Path): { a: PathPlace; b: PathPlace; point: Point }[] {
  const out: { a: PathPlace; b: PathPlace; point: Point }[] = [];
  if (!boxesTouch(pointsBox(a), pointsBox(b), SAME_MM)) return out;
  for (let i = 0; i < cubicCount(a); i++) {
    for (let k = 0; k < cubicCount(b); k++) {
      for (const m of cubicMeetings(cubicOf(a, i), cubicOf(b, k))) {
        const known = out.some(
          (o) =>
            distance(o.point, m.point) <= SAME_MM * 4 &&
            Math.abs(o.a.cubic + o.a.t - i - m.ta) < SAME_PLACE &&
            Math.abs(o.b.cubic + o.b.t - k - m.tb) < SAME_PLACE,
        );
        if (!known) out.push({ a: { cubic: i, t: m.ta }, b: { cubic: k, t: m.tb }, point: m.point });
      }
    }
  }
  return out.sort((m, n) => m.a.cubic + m.a.t - n.a.cubic - n.a.t);
}

/**
 * Every place where the path meets the endless line through p and q, in order along the path. `along` is the share from p (0) to q (1),
 * outside of 0..1 beyond them. A straight part lying on the line gives its two ends.
 */
export function pathLineIntersections(
  path: Path,
  p: Point,
  q: Point,
): { place: PathPlace; point: Point; along: number }[] {
  const out: { place: PathPlace; point: Point; along: number }[] = [];
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const dd = dx * dx + dy * dy;
  for (let i = 0; i < cubicCount(path); i++) {
    const roots = cubicLineRoots(path, i, p, q);
    for (let k = 0; k < roots.length; k++) {
      const place = { cubic: i, t: roots[k]! };
      const point = placePoint(path, place);
      const last = out[out.length - 1];
      if (
        last &&
        i + place.t - last.place.cubic - last.place.t < SAME_PLACE &&
        distance(last.point, point) <= SAME_MM * 4
      ) {
        continue;
      }
      out.push({ place, point, along: ((point.x - p.x) * dx + (point.y - p.y) * dy) / dd });
    }
  }
  return out;
}
