import { findRoles } from '../find/role/find-roles.ts';
import type { RolesTold } from '../find/role/find-roles.ts';
import type { Proposal, ProposedSeam } from '../find/proposal.ts';
import { seamEdges } from '../find/seams.ts';
import { findTogether } from '../find/together.ts';
import type { Corrections } from './corrections.ts';

/**
 * The proposal with all roles found anew, those that a person said standing fast, and the seams that follow from them; as it is where none was said.
 * A seam of the same edges keeps its id, so that what was said of it stands.
 */
export function rolesAsTold(proposal: Proposal, { pieces = {}, notFollowers = [] }: Corrections): Proposal {
  const told: Record<string, RolesTold[string]> = {};
  for (const [id, { role, half, edges = {} }] of Object.entries(pieces)) {
    const own = Object.entries(edges).filter(([, edge]) => edge.role || edge.half);
    if (role || half || own.length > 0)
      told[id] = { ...(role ? { role } : {}), ...(half ? { half } : {}), edges: Object.fromEntries(own) };
  }
  if (Object.keys(told).length === 0) return proposal;
  const followers = proposal.followers.filter((one) => !notFollowers.includes(one.piece));
  if (!proposal.begun)
    return { ...proposal, pieces: findRoles(proposal.pieces, proposal.seams, followers, told) };
  const again = findTogether(proposal.begun.pieces, followers, told, proposal.begun.cuts);
  return { ...proposal, pieces: again.pieces, seams: again.seams.map(sameNames(proposal.seams)) };
}

/** Names a seam as it was named before, a new one by its edges: what it is called does not hang on what else was found. */
function sameNames(before: readonly ProposedSeam[]): (seam: ProposedSeam) => ProposedSeam {
  const ids = new Map(before.map((seam) => [seamEdges(seam), seam.id]));
  return (seam) => {
    const edges = seamEdges(seam);
    return { ...seam, id: ids.get(edges) ?? `seam of ${edges}` };
  };
}
