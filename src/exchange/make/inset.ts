import {
  cubicCount,
  distance,
  linePath,
  pathBetween,
  pathEnd,
  pathIntersections,
  pathJoin,
  pathParallel,
  pathStart,
  placeTangent,
} from '../../geometry/index.ts';
import type { Path, PathPlace, Point } from '../../geometry/index.ts';

/**
 * The stitching line inside a cut line: every edge moved inwards by its own width (0 for folds and dart legs), neighbours cut off where
 * they meet, or prolonged until they do.
 */
export function insetOutline(edges: readonly { readonly path: Path; readonly width: number }[]): Path[] {
  const moved = edges.map(({ path, width }) => (width === 0 ? path : pathParallel(path, -width)));
  const n = moved.length;
  const ends = moved.map((path, i) => meeting(path, moved[(i + 1) % n]!, pathEnd(edges[i]!.path)));
  return moved.map((path, i) => {
    const start = ends[(i - 1 + n) % n]!;
    const end = ends[i]!;
    const from: PathPlace = start.next ?? { cubic: 0, t: 0 };
    const to: PathPlace = end.own ?? { cubic: cubicCount(path) - 1, t: 1 };
    // Where an edge is shorter than the allowances at its ends eat up, its neighbours meet first: a bit of line is left of it.
    if (order(to) - order(from) < 1e-9) return leftOver(start.point, end.point, path);
    const parts: Path[] = [pathBetween(path, from, to)];
    if (!start.next && distance(start.point, pathStart(path)) > 1e-9)
      parts.unshift(linePath(start.point, pathStart(path)));
    if (!end.own && distance(end.point, pathEnd(path)) > 1e-9) parts.push(linePath(pathEnd(path), end.point));
    const joined = pathJoin(parts);
    return [start.point, ...joined.slice(1, -1), end.point];
  });
}

const order = (place: PathPlace): number => place.cubic + place.t;

/** Shortest edge that is kept, mm. */
const LEAST_MM = 0.1;

function leftOver(start: Point, end: Point, path: Path): Path {
  if (distance(start, end) > LEAST_MM) return linePath(start, end);
  const v = placeTangent(path, { cubic: 0, t: 0 });
  const long = Math.hypot(v.x, v.y) || 1;
  return linePath(start, { x: start.x + (v.x / long) * LEAST_MM, y: start.y + (v.y / long) * LEAST_MM });
}

interface Meeting {
  readonly point: Point;
  /** Where on the two edges; null where the edge must be prolonged to the point. */
  readonly own: PathPlace | null;
  readonly next: PathPlace | null;
}

/** Moved ends this near are still one point: the edges ran on smoothly, mm. */
const SMOOTH_MM = 0.01;

function meeting(a: Path, b: Path, corner: Point): Meeting {
  const [end, start] = [pathEnd(a), pathStart(b)];
  if (distance(end, start) < SMOOTH_MM) return { point: end, own: null, next: { cubic: 0, t: 0 } };
  const hits = pathIntersections(a, b).toSorted(
    (p, q) => distance(p.point, corner) - distance(q.point, corner),
  );
  const hit = hits[0];
  if (hit) return { point: hit.point, own: hit.a, next: hit.b };
  const p = pathEnd(a);
  const q = pathStart(b);
  const u = placeTangent(a, { cubic: cubicCount(a) - 1, t: 1 });
  const v = placeTangent(b, { cubic: 0, t: 0 });
  const turn = u.x * v.y - u.y * v.x;
  if (Math.abs(turn) < 1e-6 * Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y)) {
    return { point: { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }, own: null, next: null };
  }
  const t = ((q.x - p.x) * v.y - (q.y - p.y) * v.x) / turn;
  return { point: { x: p.x + u.x * t, y: p.y + u.y * t }, own: null, next: null };
}
