import { pathAt, pathLineIntersections } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { Edge } from '../../garment/index.ts';

/** Edges are never mutated, and most of them go through a stack of alterations unchanged: each crossing is found once. */
const known = new WeakMap<Edge<'one'>, readonly Point[]>();

/** Where an edge crosses its levels, in the order of its crossings. */
export function crossingPoints(edge: Edge<'one'>): readonly Point[] {
  if (edge.crossings.length === 0) return [];
  const found = known.get(edge);
  if (found) return found;
  const points = edge.crossings.map((c) => pathAt(edge.path, c.at));
  known.set(edge, points);
  return points;
}

/** Whether a path may reach a height: its control points lie on both sides of it. Cheap, and never wrong when it says no. */
function reaches(path: Path, y: number): boolean {
  let below = false;
  let above = false;
  for (const p of path) {
    if (p.y <= y) below = true;
    if (p.y >= y) above = true;
    if (below && above) return true;
  }
  return false;
}

/** Meetings of a path with a height. */
export const atHeight = (path: Path, y: number): ReturnType<typeof pathLineIntersections> =>
  reaches(path, y) ? pathLineIntersections(path, { x: 0, y }, { x: 1, y }) : [];
