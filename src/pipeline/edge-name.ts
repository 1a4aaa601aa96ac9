import type { Pattern } from '../garment/index.ts';

/** An edge as its pattern names it, for people: `Centre front, princess seam`. Ids where the pattern has no such piece or edge. */
export function edgeName(pattern: Pattern, pieceId: string, edgeId: string): string {
  const piece = pattern.pieces.find((p) => p.id === pieceId);
  const edge = piece?.edges.find((e) => e.id === edgeId);
  return `${piece?.name ?? pieceId}, ${edge?.name ?? edgeId}`;
}
