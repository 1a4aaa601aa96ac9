import type { EdgeRole } from '../../../garment/index.ts';
import type { ProposedPiece, ProposedSeam } from '../proposal.ts';

/**
 * What a proposed seam is, by what its edges are: `side` and `side` a side seam, `cap` and `armhole` the armhole, a band by what it is sewn to.
 * Undefined where an edge is unknown or the two sides do not go together.
 */
export function proposedSeamRole(
  pieces: readonly ProposedPiece[],
  { a, b }: Pick<ProposedSeam, 'a' | 'b'>,
): EdgeRole | undefined {
  const rolesOf = (refs: ProposedSeam['a']): EdgeRole[] => {
    const own = refs.map((ref) => {
      const edge = pieces.find((one) => one.id === ref.piece)?.edges.find((one) => one.id === ref.edge);
      return [edge?.role, edge?.also].flatMap((role) => (role ? [role === 'outseam' ? 'side' : role] : []));
    });
    return (own[0] ?? []).filter((role) => own.every((roles) => roles.includes(role)));
  };
  const [p, q] = [rolesOf(a), rolesOf(b)];
  const shared = p.find((role) => q.includes(role));
  if (shared) return shared;
  if ((p.includes('cap') && q.includes('armhole')) || (q.includes('cap') && p.includes('armhole')))
    return 'armhole';
  return p.includes('attached') ? q[0] : q.includes('attached') ? p[0] : undefined;
}
