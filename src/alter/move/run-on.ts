import { scale, sub, unit } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Pull } from './pull.ts';

/** Direction in which an edge leaves its end (or start), outwards. */
export function outward(path: readonly Point[], end: 'start' | 'end'): Point {
  const n = path.length - 1;
  return end === 'end' ? unit(sub(path[n]!, path[n - 1]!)) : unit(sub(path[0]!, path[1]!));
}

/** Both corners of an edge run on along the edges beside it by `mm` (negative: drawn back): a hem let down, its sides continued. */
export function runOn(piece: DrawnPiece, edgeId: string, mm: number): Pull[] {
  const n = piece.edges.length;
  const i = piece.edges.findIndex((e) => e.id === edgeId);
  const before = piece.edges[(i + n - 1) % n]!;
  const after = piece.edges[(i + 1) % n]!;
  return [
    { edge: edgeId, at: 0, by: scale(outward(before.path, 'end'), mm) },
    { edge: edgeId, at: 1, by: scale(outward(after.path, 'start'), mm) },
  ];
}

/** The corner at an edge's start or end moved by mm along the edge itself, outwards positive. */
export function runEnd(piece: DrawnPiece, edgeId: string, end: 'start' | 'end', mm: number): Pull {
  const edge = piece.edges.find((e) => e.id === edgeId)!;
  return { edge: edgeId, at: end === 'start' ? 0 : 1, by: scale(outward(edge.path, end), mm) };
}
