import { EVIDENCE_WORDS as SAY, reasons } from '../words/evidence-table.ts';
import type { Proposal, ProposedFollower, ProposedPiece } from './proposal.ts';
import { findRoles } from './role/find-roles.ts';
import type { RolesTold } from './role/find-roles.ts';
import { findSeams } from './seams.ts';
import { splitUnderlaps } from './underlap.ts';

/**
 * What pieces and edges are, and which are sewn together. What edges are says what may be sewn together, and what is sewn together what they are:
 * each is asked twice. What a person said stands.
 */
export function findTogether(
  pieces: readonly ProposedPiece[],
  followers: readonly ProposedFollower[],
  told: RolesTold = {},
): Pick<Proposal, 'pieces' | 'seams'> {
  const first = findRoles(pieces, findSeams(pieces, followers), followers, told);
  const { pieces: cut, seams } = splitUnderlaps(first, findSeams(first, followers));
  return { pieces: findRoles(settleKinds(cut, seams), seams, followers, told), seams };
}

/** Edges that no seam takes: the lowest one across the grain is a hem, the others are free. */
function settleKinds(pieces: readonly ProposedPiece[], seams: Proposal['seams']): ProposedPiece[] {
  const joined = new Set(
    seams
      .filter((seam) => seam.rank === 1)
      .flatMap((seam) => [...seam.a, ...seam.b].map((ref) => `${ref.piece} ${ref.edge}`)),
  );
  return pieces.map((piece) => ({
    ...piece,
    edges: piece.edges.map((edge) => {
      if (edge.kind !== 'seam' || joined.has(`${piece.id} ${edge.id}`)) return edge;
      const bottom = edge.place === 'below';
      return {
        ...edge,
        kind: bottom ? ('hem' as const) : ('free' as const),
        evidence: reasons([edge.evidence, SAY['no-edge-fits']()]),
      };
    }),
  }));
}
