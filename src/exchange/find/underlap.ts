import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import { cutEdge } from './cut-edge.ts';
import { lapHalf, sewnHalf } from './lap-half.ts';
import type { ProposedPiece, ProposedSeam } from './proposal.ts';
import type { LappedSeam } from './seams.ts';

/**
 * A waistband runs on beyond the seam to lie under its other end: drawn as one straight edge it would be eased in. Cuts the underlap of every
 * first-choice seam off and leaves it free; alternatives that name the edge that was cut are dropped. Each half has an id of its own.
 */
export function splitUnderlaps(
  pieces: readonly ProposedPiece[],
  seams: readonly LappedSeam[],
): { pieces: ProposedPiece[]; seams: ProposedSeam[] } {
  let split = [...pieces];
  const cuts: { readonly piece: string; readonly edge: string }[] = [];
  const made = seams.map(({ lap, ...seam }): ProposedSeam => {
    const ref = lap && seam[lap.side][0];
    const piece = split.find((one) => one.id === ref?.piece);
    const edge = piece?.edges.find((one) => one.id === ref?.edge);
    if (!lap || !ref || !piece || !edge || seam.rank !== 1) return seam;
    const over = {
      id: lapHalf(edge.id),
      kind: 'free',
      evidence: SAY.underlap({ long: lap.mm }),
    } as const;
    const sewn = { id: sewnHalf(edge.id), kind: edge.kind, evidence: edge.evidence };
    const at = edge.lengths.map((long) => (lap.first ? lap.mm : long - lap.mm) / long);
    const cut = cutEdge(piece, edge, at, lap.first ? [over, sewn] : [sewn, over]);
    split = split.map((one) => (one === piece ? cut.piece : one));
    cuts.push({ piece: ref.piece, edge: ref.edge });
    return { ...seam, [lap.side]: [{ ...ref, edge: sewn.id }] };
  });
  const names = (seam: ProposedSeam) =>
    [...seam.a, ...seam.b].some((ref) =>
      cuts.some(({ piece, edge }) => piece === ref.piece && edge === ref.edge),
    );
  return { pieces: split, seams: made.filter((seam, i) => seam.rank === 1 || !names(seams[i]!)) };
}
