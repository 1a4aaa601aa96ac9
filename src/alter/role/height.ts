import { pathEnd, pathLineIntersections, pathStart } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import { hasRole } from '../../garment/index.ts';
import type { DrawnPiece, Edge, EdgeRole, Level } from '../../garment/index.ts';
import { levelPoints } from '../move/anchor.ts';
import { atHeight } from '../move/crossing.ts';
import { Refusal } from '../words/refusal.ts';

/** Height (y, mm) of a level on a piece: of its drawn level line, else of where its outline meets the level. Undefined when the piece does not know it. */
export function levelHeight(piece: DrawnPiece, level: Level): number | undefined {
  const line = piece.lines.find((l) => l.kind === 'level' && l.level === level);
  if (line) return (pathStart(line.path).y + pathEnd(line.path).y) / 2;
  const points = levelPoints(piece, level);
  if (points.length === 0) return undefined;
  return points.reduce((sum, p) => sum + p.y, 0) / points.length;
}

/** Heights of the printed lengthen/shorten lines, top first. */
export const adjustHeights = (piece: DrawnPiece): number[] =>
  piece.lines
    .filter((l) => l.kind === 'adjust')
    .map((l) => (pathStart(l.path).y + pathEnd(l.path).y) / 2)
    .toSorted((a, b) => b - a);

/** Lowest and highest point of the outline's corners and control points: close enough to say whether a height is on the piece. */
export function extent(piece: DrawnPiece): { low: number; high: number; left: number; right: number } {
  let [low, high, left, right] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const edge of piece.edges) {
    for (const p of edge.path) {
      low = Math.min(low, p.y);
      high = Math.max(high, p.y);
      left = Math.min(left, p.x);
      right = Math.max(right, p.x);
    }
  }
  return { low, high, left, right };
}

/** Where the height crosses the outline, first and last from the left. Throws Refusal `line-misses` when it does not. */
export function across(piece: DrawnPiece, y: number): { left: Point; right: Point } {
  const points = piece.edges.flatMap((e) => atHeight(e.path, y).map((hit) => hit.point));
  const sorted = points.toSorted((a, b) => a.x - b.x);
  const left = sorted[0];
  const right = sorted[sorted.length - 1];
  if (!left || !right || right.x - left.x < 1) {
    throw new Refusal('line-misses', { piece: piece.name }, { piece: piece.id });
  }
  return { left, right };
}

/** Where an upright line crosses the outline, lowest and highest. Throws Refusal `line-misses` when it does not. */
export function upDown(piece: DrawnPiece, x: number): { low: Point; high: Point } {
  const points = piece.edges.flatMap((e) =>
    pathLineIntersections(e.path, { x, y: 0 }, { x, y: 1 }).map((hit) => hit.point),
  );
  const sorted = points.toSorted((a, b) => a.y - b.y);
  const low = sorted[0];
  const high = sorted[sorted.length - 1];
  if (!low || !high || high.y - low.y < 1) {
    throw new Refusal('line-misses', { piece: piece.name }, { piece: piece.id });
  }
  return { low, high };
}

/** Seams that run up and down: a slash that should open top and bottom must not leave through one. */
const UPRIGHT: readonly EdgeRole[] = ['panel', 'side', 'centre', 'inseam', 'rise'];

/**
 * Where an upright slash near `prefer` goes from the upper to the lower edge of the piece without touching a seam that runs up and down; tried ever further aside.
 * `also`: further edges it must not leave through. Refusal `no-slash` when there is no such place.
 */
export function clearUpright(piece: DrawnPiece, prefer: number, also: readonly EdgeRole[] = []): number {
  const { left, right } = extent(piece);
  const blocked = (x: number): boolean =>
    x <= left + 5 ||
    x >= right - 5 ||
    piece.edges.some(
      (e) =>
        [...UPRIGHT, ...also].some((role) => hasRole(e, role)) &&
        pathLineIntersections(e.path, { x, y: 0 }, { x, y: 1 }).length > 0,
    );
  for (let step = 0; step <= 20; step++) {
    const off = (step * (right - left)) / 40;
    if (!blocked(prefer - off)) return prefer - off;
    if (!blocked(prefer + off)) return prefer + off;
  }
  throw new Refusal('no-slash', { piece: piece.name }, { piece: piece.id });
}

/** Share of an edge's length at which it meets a level: 0 or 1 at a corner of that level. Undefined where it does not. */
export function levelShare(piece: DrawnPiece, edge: Edge<'one'>, level: Level): number | undefined {
  const crossing = edge.crossings.find((c) => c.level === level);
  if (crossing) return crossing.at;
  if (edge.from === level) return 0;
  const next = piece.edges[(piece.edges.indexOf(edge) + 1) % piece.edges.length]!;
  return next.from === level ? 1 : undefined;
}

/** The edge's notch of a count (1 front, 2 back), share of length; undefined when it has none. */
export const notchShare = (edge: Edge<'one'>, count: 1 | 2 | 3): number | undefined =>
  edge.notches.find((n) => n.count === count && n.at > 0.02 && n.at < 0.98)?.at;
