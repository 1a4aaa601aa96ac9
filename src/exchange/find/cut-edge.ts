import { pathLength, pathPart } from '../../geometry/index.ts';
import type { EdgeKind } from '../../garment/index.ts';
import { nameEdges } from './piece.ts';
import type { Evidence, ProposedEdge, ProposedPiece } from './proposal.ts';
import { sameTopology } from './topology.ts';

/** What one half of a cut edge is. */
export interface Half {
  readonly id?: string;
  readonly kind: EdgeKind;
  readonly evidence: Evidence;
}

/** Cuts an edge in two where no corner shows it, at a share of its length per size. A half without an id of its own: the first keeps the edge's, the second gets a new one. */
export function cutEdge(
  piece: ProposedPiece,
  edge: ProposedEdge,
  at: readonly number[],
  halves: readonly [Half, Half],
): { piece: ProposedPiece; ids: readonly [string, string] } {
  const ids = [halves[0].id ?? edge.id, halves[1].id ?? `edge-${piece.edges.length + 1}`] as const;
  const made = halves.map((half, i): ProposedEdge => {
    const span = at.map((share): [number, number] => (i === 0 ? [0, share] : [share, 1]));
    const { paths, off } = sameTopology(edge.paths.map((path, k) => pathPart(path, ...span[k]!)));
    return {
      ...edge,
      kind: half.kind,
      evidence: half.evidence,
      id: ids[i]!,
      paths,
      lengths: paths.map(pathLength),
      turns: i === 0 ? [edge.turns[0], 0] : [0, edge.turns[1]],
      notches: edge.notches.flatMap((notch) => {
        const own = notch.at.map((share, k) => (share - span[k]![0]) / (span[k]![1] - span[k]![0]));
        return own.every((share) => share >= 0 && share <= 1) ? [{ ...notch, at: own }] : [];
      }),
      off: Math.max(off, edge.off),
    };
  });
  const edges = piece.edges.flatMap((one) => (one.id === edge.id ? made : [one]));
  return { piece: { ...piece, edges: nameEdges(edges, piece.box) }, ids };
}
