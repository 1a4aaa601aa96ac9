import { pathLength, scale, sub, unit } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { DrawnPiece, Edge } from '../../garment/index.ts';
import type { Pull } from './pull.ts';

/** Direction in which an edge leaves its end (or start), outwards. */
export function outward(path: readonly Point[], end: 'start' | 'end'): Point {
  const n = path.length - 1;
  return end === 'end' ? unit(sub(path[n]!, path[n - 1]!)) : unit(sub(path[0]!, path[1]!));
}

/** A level this near to a drawn-back corner can no longer hold the line there, mm. */
const ROOM_MM = 5;

/** The edge stays where it crosses its levels, those left out that the corner is drawn back to or past. */
const stills = (edge: Edge<'one'>, end: 'start' | 'end', mm: number): Pull[] =>
  edge.crossings
    .filter((c) => (end === 'start' ? c.at : 1 - c.at) * pathLength(edge.path) > Math.max(0, -mm) + ROOM_MM)
    .map((c) => ({ edge: edge.id, at: c.at, by: { x: 0, y: 0 }, smooth: true }));

/**
 * Both corners of an edge run on along the edges beside it by `mm` (negative: drawn back): a hem let down, its sides continued. From the next level on those
 * stay as they are.
 */
export function runOn(piece: DrawnPiece, edgeId: string, mm: number): Pull[] {
  const n = piece.edges.length;
  const i = piece.edges.findIndex((e) => e.id === edgeId);
  const before = piece.edges[(i + n - 1) % n]!;
  const after = piece.edges[(i + 1) % n]!;
  return [
    { edge: edgeId, at: 0, by: scale(outward(before.path, 'end'), mm) },
    { edge: edgeId, at: 1, by: scale(outward(after.path, 'start'), mm) },
    ...stills(before, 'end', mm),
    ...stills(after, 'start', mm),
  ];
}

/** The corner at an edge's start or end moved by mm along the edge itself, outwards positive. */
export function runEnd(piece: DrawnPiece, edgeId: string, end: 'start' | 'end', mm: number): Pull {
  const edge = piece.edges.find((e) => e.id === edgeId)!;
  return { edge: edgeId, at: end === 'start' ? 0 : 1, by: scale(outward(edge.path, end), mm) };
}
