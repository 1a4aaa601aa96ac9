import {
  distance,
  nearestPlace,
  pathEnd,
  pathLineIntersections,
  pathStart,
  shareAtPlace,
} from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';

/** A line through the joint of two curves is met on both of them; nearer than this they are one place, mm. */
const ONE_MM = 0.05;

/** Share of an edge at which it crosses a line, prolonged; null where it does not, or in more places than one. */
export function crossingShare(edge: Path, line: Path): number | null {
  const hits = pathLineIntersections(edge, pathStart(line), pathEnd(line)).map((hit) => hit.point);
  const [first] = hits;
  if (!first || hits.some((point) => distance(point, first) > ONE_MM)) return null;
  return shareAtPlace(edge, nearestPlace(edge, first).place);
}
