import { hasRole } from '../../garment/index.ts';
import type { EdgeRole, NestedPiece } from '../../garment/index.ts';
import {
  distance,
  lengthAtPlace,
  pathAt,
  pathEnd,
  pathLength,
  pathLineIntersections,
  pathStart,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';

/** From a corner (where edge `corner` starts) on along the outline: forwards, or backwards over the edges before it. */
export interface Way {
  readonly corner: number;
  readonly on: 1 | -1;
}

/** Edges that run down the body. */
const UPRIGHT: readonly EdgeRole[] = ['side', 'panel', 'centre', 'opening', 'inseam', 'underarm', 'rise'];

export const anyRole = (edge: NestedPiece['edges'][number], roles: readonly EdgeRole[]): boolean =>
  roles.some((role) => hasRole(edge, role));

const wrap = (i: number, n: number): number => ((i % n) + n) % n;

/** The edge that a way begins on. */
export const firstOf = (piece: NestedPiece, { corner, on }: Way): NestedPiece['edges'][number] =>
  piece.edges[wrap(on === 1 ? corner : corner - 1, piece.edges.length)]!;

/** The one run of edges of a role, darts between them left out: the corners where it starts and ends; null where there is none or more than one. */
export function roleRun(
  piece: NestedPiece,
  role: EdgeRole,
): { readonly start: number; readonly end: number } | null {
  const n = piece.edges.length;
  const is = piece.edges.map((edge) => edge.kind !== 'dart' && hasRole(edge, role));
  const next = (i: number, on: 1 | -1): number => {
    let at = wrap(i + on, n);
    while (piece.edges[at]!.kind === 'dart' && at !== i) at = wrap(at + on, n);
    return at;
  };
  const starts = [...is.keys()].filter((i) => is[i] && !is[next(i, -1)]);
  if (starts.length !== 1) return null;
  let last = starts[0]!;
  while (is[next(last, 1)]) last = next(last, 1);
  return { start: starts[0]!, end: wrap(last + 1, n) };
}

/** The corners where an edge of the one kind meets an edge of the other, each with the way along the second. */
export function meetings(
  piece: NestedPiece,
  first: readonly EdgeRole[],
  second: readonly EdgeRole[],
): readonly Way[] {
  const n = piece.edges.length;
  return piece.edges.flatMap((edge, corner): Way[] => {
    const before = piece.edges[wrap(corner - 1, n)]!;
    if (edge.kind === 'dart' || before.kind === 'dart') return [];
    if (anyRole(before, first) && anyRole(edge, second)) return [{ corner, on: 1 }];
    if (anyRole(edge, first) && anyRole(before, second)) return [{ corner, on: -1 }];
    return [];
  });
}

/** The upright edges that a way runs along, darts in them passed over; each as walked. */
function along(piece: NestedPiece, k: number, { corner, on }: Way): Path[] {
  const n = piece.edges.length;
  const paths: Path[] = [];
  for (let step = 0, i = on === 1 ? corner : corner - 1; step < n; step++, i += on) {
    const edge = piece.edges[wrap(i, n)]!;
    if (edge.kind === 'dart') continue;
    if (!anyRole(edge, UPRIGHT)) break;
    paths.push(on === 1 ? edge.path[k]! : edge.path[k]!.toReversed());
  }
  return paths;
}

/** How long a way is, mm. */
export const wayLength = (piece: NestedPiece, k: number, way: Way): number =>
  along(piece, k, way).reduce((sum, path) => sum + pathLength(path), 0);

/** The point so far along a way, mm; null where it is shorter. */
export function pointAlong(piece: NestedPiece, k: number, way: Way, mm: number): Point | null {
  let left = mm;
  for (const path of along(piece, k, way)) {
    const long = pathLength(path);
    if (left <= long) return pathAt(path, left / long);
    left -= long;
  }
  return null;
}

/** A corner this near to a height is on it, mm. */
const CORNER_MM = 0.05;

/** Where a height meets the outline, farthest left and farthest right; null where it misses it. */
export function across(piece: NestedPiece, k: number, y: number): readonly [Point, Point] | null {
  const points = piece.edges.flatMap((edge) => {
    const path = edge.path[k]!;
    const hits = pathLineIntersections(path, { x: 0, y }, { x: 1, y }).map((hit) => hit.point);
    const start = pathStart(path);
    return Math.abs(start.y - y) < CORNER_MM ? [...hits, start] : hits;
  });
  const [left, right] = [Math.min, Math.max].map((end) => end(...points.map((p) => p.x)));
  return points.length < 2 || right! - left! < 1
    ? null
    : [
        { x: left!, y },
        { x: right!, y },
      ];
}

/** Where a corner lies. */
export const cornerAt = (piece: NestedPiece, k: number, corner: number): Point =>
  pathStart(piece.edges[corner]!.path[k]!);

/** Where an edge meets a height, mm from its upper end; null where it does not, or more than once. */
export function fromTop(path: Path, y: number): number | null {
  const [start, end] = [pathStart(path), pathEnd(path)];
  const down = start.y >= end.y ? path : path.toReversed();
  for (const [point, at] of [
    [pathStart(down), 0],
    [pathEnd(down), pathLength(down)],
  ] as const)
    if (Math.abs(point.y - y) < CORNER_MM) return at;
  const [hit, ...more] = pathLineIntersections(down, { x: 0, y }, { x: 1, y });
  if (!hit || more.some((one) => distance(one.point, hit.point) > CORNER_MM)) return null;
  return lengthAtPlace(down, hit.place);
}

/** The point so far from an edge's upper end. */
export function belowTop(path: Path, mm: number): Point {
  const down = pathStart(path).y >= pathEnd(path).y ? path : path.toReversed();
  return pathAt(down, Math.min(1, mm / pathLength(down)));
}
