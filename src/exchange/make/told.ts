import { findRoles } from '../find/role/find-roles.ts';
import type { RolesTold } from '../find/role/find-roles.ts';
import type { Proposal } from '../find/proposal.ts';
import type { Corrections } from './corrections.ts';

/** The proposal with all roles found anew, those that a person said standing fast; as it is where none was said. */
export function rolesAsTold(proposal: Proposal, { pieces = {}, notFollowers = [] }: Corrections): Proposal {
  const told: Record<string, RolesTold[string]> = {};
  for (const [id, { role, half, edges = {} }] of Object.entries(pieces)) {
    const own = Object.entries(edges).filter(([, edge]) => edge.role || edge.half);
    if (role || half || own.length > 0)
      told[id] = { ...(role ? { role } : {}), ...(half ? { half } : {}), edges: Object.fromEntries(own) };
  }
  if (Object.keys(told).length === 0) return proposal;
  const followers = proposal.followers.filter((one) => !notFollowers.includes(one.piece));
  return { ...proposal, pieces: findRoles(proposal.pieces, proposal.seams, followers, told) };
}
