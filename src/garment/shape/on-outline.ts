import { distance, nearestPlace, pathEnd, pathLineIntersections, pathStart } from '../../geometry/index.ts';
import type { Path, PathPlace, Point } from '../../geometry/index.ts';

/** An inner line's end this near to the outline was drawn to it and stays on it. */
export const ON_OUTLINE_MM = 0.5;

/**
 * Where on an edge the end `point` of an inner line lies, when it was drawn to that edge: the nearest crossing with the line's own
 * direction (`towards` its other end), else the nearest place. Undefined further off than ON_OUTLINE_MM.
 */
export function placeOnEdge(
  path: Path,
  point: Point,
  towards: Point,
): { place: PathPlace; distance: number } | undefined {
  if (!withinHull(path, point)) return undefined;
  const last = { cubic: (path.length - 1) / 3 - 1, t: 1 };
  if (distance(pathStart(path), point) === 0) return { place: { cubic: 0, t: 0 }, distance: 0 };
  if (distance(pathEnd(path), point) === 0) return { place: last, distance: 0 };
  let best: { place: PathPlace; distance: number } | undefined;
  // A line's own crossing is much cheaper than a search over the whole curve, and is nearly always it.
  if (distance(point, towards) > ON_OUTLINE_MM) {
    for (const hit of pathLineIntersections(path, point, towards)) {
      const off = distance(hit.point, point);
      if (off <= (best?.distance ?? ON_OUTLINE_MM)) best = { place: hit.place, distance: off };
    }
  }
  if (best) return best;
  const near = nearestPlace(path, point);
  return near.distance <= ON_OUTLINE_MM ? { place: near.place, distance: near.distance } : undefined;
}

/** May the point lie on the path? A cubic lies in the box of its control points: nothing further than ON_OUTLINE_MM outside of that is on it. */
export function withinHull(path: Path, point: Point): boolean {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < path.length; i++) {
    const p = path[i]!;
    if (p.x < minX) minX = p.x;
    if (p.x > maxX) maxX = p.x;
    if (p.y < minY) minY = p.y;
    if (p.y > maxY) maxY = p.y;
  }
  return (
    point.x >= minX - ON_OUTLINE_MM &&
    point.x <= maxX + ON_OUTLINE_MM &&
    point.y >= minY - ON_OUTLINE_MM &&
    point.y <= maxY + ON_OUTLINE_MM
  );
}
