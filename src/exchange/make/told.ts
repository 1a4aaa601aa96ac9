import { asTold, findRoles } from '../find/role/find-roles.ts';
import { withNotchRoles } from '../find/role/notch-role.ts';
import type { RolesTold } from '../find/role/find-roles.ts';
import type { Proposal, ProposedPiece, ProposedSeam } from '../find/proposal.ts';
import { seamEdges } from '../find/seams.ts';
import { pieceAt } from '../../garment/index.ts';
import type { EdgeRef } from '../../garment/index.ts';
import { edgeNow, saidNow, wholeEdge } from '../find/lap-half.ts';
import { findTogether, toldNow } from '../find/together.ts';
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
    const again = findTogether(begun, followers, against);
    now = { ...proposal, pieces: again.pieces, seams: again.seams.map(sameNames(proposal.seams)) };
  }
  const said = toldNow(now.pieces, told);
  const surer = findRoles(now.pieces, now.seams, followers, said);
  const same = taken(surer) === taken(now.pieces);
  const known = same ? surer : now.pieces.map((piece) => asTold(piece, said[piece.id]));
  return { ...now, pieces: withNotchRoles(known, now.seams) };
}

/** What a person said, by the edges as they stand in the proposal: an underlap may have been cut off since, or no longer be. */
export function saidOfEdgesNow(proposal: Proposal, said: Corrections): Corrections {
  const edgesOf = (id: string) => pieceAt(proposal, id)?.edges ?? [];
  const chain = (refs: readonly EdgeRef[]): EdgeRef[] =>
    refs.map((ref) => ({ ...ref, edge: edgeNow(edgesOf(ref.piece), ref.edge) ?? ref.edge }));
  return {
    ...said,
    ...(said.pieces
      ? {
          pieces: Object.fromEntries(
            Object.entries(said.pieces).map(([id, own]) => [
              id,
              own.edges ? { ...own, edges: saidNow(edgesOf(id), own.edges) } : own,
            ]),
          ),
        }
      : {}),
    ...(said.seams?.add
      ? {
          seams: {
            ...said.seams,
            add: said.seams.add.map((seam) => ({ ...seam, a: chain(seam.a), b: chain(seam.b) })),
          },
        }
      : {}),
  };
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
function otherwise({ pieces }: Proposal, all: RolesTold, before: RolesTold = {}): RolesTold | undefined {
  const [told, heeded] = [toldNow(pieces, all), toldNow(pieces, before)];
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

/** Names a seam as it was named before, also where an underlap has been cut off an edge of it or no longer is, a new one by its edges: what it is called does not hang on what else was found. */
function sameNames(before: readonly ProposedSeam[]): (seam: ProposedSeam) => ProposedSeam {
  const edgesOf = ({ a, b }: ProposedSeam): string => {
    const whole = (refs: ProposedSeam['a']) => refs.map((ref) => ({ ...ref, edge: wholeEdge(ref.edge) }));
    return seamEdges({ a: whole(a), b: whole(b) });
  };
  const ids = new Map(before.map((seam) => [edgesOf(seam), seam.id]));
  return (seam) => {
    const edges = edgesOf(seam);
    return { ...seam, id: ids.get(edges) ?? `seam of ${edges}` };
  };
}
