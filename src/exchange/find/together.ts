import { EVIDENCE_WORDS as SAY, reasons } from '../words/evidence-table.ts';
import { saidNow } from './lap-half.ts';
import type { Proposal, ProposedFollower, ProposedPiece } from './proposal.ts';
import { findRoles } from './role/find-roles.ts';
import type { RolesTold } from './role/find-roles.ts';
import { withNotchRoles } from './role/notch-role.ts';
import { findSeams } from './seams.ts';
import { splitUnderlaps } from './underlap.ts';

/**
 * What pieces and edges are, and which are sewn together. What edges are says what may be sewn together, and what is sewn together what they are:
 * each is asked twice. What a person said stands, of an edge as of the half of it that is sewn.
 */
export function findTogether(
  pieces: readonly ProposedPiece[],
  followers: readonly ProposedFollower[],
  told: RolesTold = {},
): Pick<Proposal, 'pieces' | 'seams'> {
  const first = findRoles(pieces, findSeams(pieces, followers), followers, toldNow(pieces, told));
  const { pieces: cut, seams } = splitUnderlaps(first, findSeams(first, followers));
  const known = findRoles(settleKinds(cut, seams), seams, followers, toldNow(cut, told));
  return { pieces: withNotchRoles(known, seams), seams };
}

/** What was said of edges, by the edges as they stand: cut or whole. */
export const toldNow = (pieces: readonly ProposedPiece[], told: RolesTold): RolesTold =>
  Object.fromEntries(
    Object.entries(told).map(([id, said]) => {
      const edges = pieces.find((piece) => piece.id === id)?.edges ?? [];
      return [id, said.edges ? { ...said, edges: saidNow(edges, said.edges) } : said];
    }),
  );

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
