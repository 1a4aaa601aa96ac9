import { pathLength } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { extendEdge, trimEdge } from './trim.ts';
import { edgeOf } from './split-edge.ts';

/**
 * The corner where an edge starts moved along the outline by `mm`, into that edge (positive) or back into the one before it.
 * The outline itself does not change: what one edge loses the other gains.
 */
export function slideCorner(piece: DrawnPiece, edgeId: string, mm: number): DrawnPiece {
  const n = piece.edges.length;
  const { edge, index } = edgeOf(piece, edgeId);
  const i = (index + n - 1) % n;
  const before = piece.edges[i]!;
  const edges = [...piece.edges];
  if (mm > 0) {
    const cut = trimEdge(edge, 'start', Math.min(mm, pathLength(edge.path) * 0.9));
    edges[index] = cut.edge;
    edges[i] = extendEdge(before, 'end', cut.off);
  } else if (mm < 0) {
    const cut = trimEdge(before, 'end', Math.min(-mm, pathLength(before.path) * 0.9));
    edges[i] = cut.edge;
    edges[index] = extendEdge(edge, 'start', cut.off);
  }
  return { ...piece, edges };
}
