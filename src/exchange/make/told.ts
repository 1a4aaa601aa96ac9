import { asTold, findRoles } from '../find/role/find-roles.ts';
import type { RolesTold } from '../find/role/find-roles.ts';
import type { Proposal, ProposedPiece, ProposedSeam } from '../find/proposal.ts';
import { seamEdges } from '../find/seams.ts';
import { findTogether } from '../find/together.ts';
import type { Corrections } from './corrections.ts';

/**
 * The proposal with all roles found anew, those that a person said standing fast, and the seams that follow from them; as it is where none was said.
 * An answer that agrees with what was thought makes that surer and changes nothing else: pieces, roles and seams stay. A seam of the same edges
 * keeps its id, so that what was said of it stands.
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
  const { begun } = proposal;
  if (!begun) return { ...proposal, pieces: findRoles(proposal.pieces, proposal.seams, followers, told) };
  let now = proposal;
  let against: RolesTold = {};
  // What is found with the answers that say otherwise may go against others; each round takes in more of them.
  for (let more = otherwise(now, told); more; more = otherwise(now, told, against)) {
    against = together(against, more);
    const again = findTogether(begun.pieces, followers, against, begun.cuts);
    now = { ...proposal, pieces: again.pieces, seams: again.seams.map(sameNames(proposal.seams)) };
  }
  const surer = findRoles(now.pieces, now.seams, followers, told);
  const same = taken(surer) === taken(now.pieces);
  return { ...now, pieces: same ? surer : now.pieces.map((piece) => asTold(piece, told[piece.id])) };
}

type Said = NonNullable<RolesTold[string]>;
interface Is {
  readonly role?: string;
  readonly half?: string;
}

/** Whether what is found is what was said, as far as anything was. */
const agrees = (found: Is | undefined, { role, half }: Is): boolean =>
  (role === undefined || role === found?.role) && (half === undefined || half === found?.half);

/** Answers that what was found goes against, without those that were heeded: of pieces, and where none is left of edges. Undefined where there are none. */
function otherwise({ pieces }: Proposal, told: RolesTold, heeded: RolesTold = {}): RolesTold | undefined {
  const own: Record<string, Said> = {};
  const edges: Record<string, Said> = {};
  for (const [id, said] of Object.entries(told)) {
    const found = pieces.find((piece) => piece.id === id);
    const { edges: saidOfEdges = {}, ...ofPiece } = said;
    const known = heeded[id];
    if (!(known?.role || known?.half) && !agrees(found, ofPiece)) own[id] = ofPiece;
    const wrong = Object.entries(saidOfEdges).filter(
      ([edge, is]) =>
        !known?.edges?.[edge] &&
        !agrees(
          found?.edges.find((one) => one.id === edge),
          is,
        ),
    );
    if (wrong.length > 0) edges[id] = { edges: Object.fromEntries(wrong) };
  }
  const more = Object.keys(own).length > 0 ? own : edges;
  return Object.keys(more).length > 0 ? more : undefined;
}

/** Both, piece by piece. */
const together = (a: RolesTold, b: RolesTold): RolesTold => ({
  ...a,
  ...Object.fromEntries(
    Object.entries(b).map(([id, said]) => [
      id,
      { ...a[id], ...said, edges: { ...a[id]?.edges, ...said.edges } },
    ]),
  ),
});

/** What everything is taken for, and how it lies. */
const taken = (pieces: readonly ProposedPiece[]): string =>
  JSON.stringify(
    pieces.map(({ role, half, drawn, edges }) => [
      role,
      half,
      drawn,
      edges.map((edge) => [edge.role, edge.half, edge.also]),
    ]),
  );

/** Names a seam as it was named before, a new one by its edges: what it is called does not hang on what else was found. */
function sameNames(before: readonly ProposedSeam[]): (seam: ProposedSeam) => ProposedSeam {
  const ids = new Map(before.map((seam) => [seamEdges(seam), seam.id]));
  return (seam) => {
    const edges = seamEdges(seam);
    return { ...seam, id: ids.get(edges) ?? `seam of ${edges}` };
  };
}
