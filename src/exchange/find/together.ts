import { EVIDENCE_WORDS as SAY, reasons } from '../words/evidence-table.ts';
import type { Proposal, ProposedFollower, ProposedPiece, UnderlapCut } from './proposal.ts';
import { findRoles } from './role/find-roles.ts';
import type { RolesTold } from './role/find-roles.ts';
import { findSeams } from './seams.ts';
import { splitUnderlaps } from './underlap.ts';

/**
 * What pieces and edges are, and which are sewn together. What edges are says what may be sewn together, and what is sewn together what they are:
 * each is asked twice. What a person said stands. `shown`: the underlaps that were cut off when the pieces were shown, whose halves are spoken of.
 */
export function findTogether(
  pieces: readonly ProposedPiece[],
  followers: readonly ProposedFollower[],
  told: RolesTold = {},
  shown: readonly UnderlapCut[] = [],
): Pick<Proposal, 'pieces' | 'seams'> & { readonly cuts: readonly UnderlapCut[] } {
  const first = findRoles(pieces, findSeams(pieces, followers), followers, ofWhole(told, shown));
  const { pieces: cut, seams, cuts } = splitUnderlaps(first, findSeams(first, followers));
  const gone = shown.filter(
    ({ piece, sewn }) => !cuts.some((one) => one.piece === piece && one.sewn === sewn),
  );
  return { pieces: findRoles(settleKinds(cut, seams), seams, followers, ofWhole(told, gone)), seams, cuts };
}

/** What was said of the half that is sewn is said of the whole edge while it is not cut. */
function ofWhole(told: RolesTold, cuts: readonly UnderlapCut[]): RolesTold {
  const out: Record<string, RolesTold[string]> = { ...told };
  for (const { piece, edge, sewn } of cuts) {
    const { [edge]: _, ...others } = out[piece]?.edges ?? {};
    const said = out[piece]?.edges?.[sewn];
    if (out[piece]) out[piece] = { ...out[piece], edges: said ? { ...others, [edge]: said } : others };
  }
  return out;
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
