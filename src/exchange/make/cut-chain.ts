import type { EdgeRef } from '../../garment/index.ts';
import type { Proposal, ProposedPiece } from '../find/proposal.ts';
import type { Corrections, EdgeCorrection } from './corrections.ts';

/** Edges of a proposal that were cut in two: the two ids by `piece edge`. */
export type Cuts = ReadonlyMap<string, readonly [string, string]>;

type Sewn = { readonly a: readonly EdgeRef[]; readonly b: readonly EdgeRef[] };

/**
 * The proposal with the pieces whose edges were cut, and everything that names those edges (seams, followers, what a person said) naming both parts.
 * `turned` has the last word on a seam.
 */
export function withCuts(
  proposal: Proposal,
  said: Corrections,
  pieces: readonly ProposedPiece[],
  cuts: Cuts,
  turned: <T extends Sewn>(seam: T) => T = (seam) => seam,
): { readonly proposal: Proposal; readonly said: Corrections } {
  if (cuts.size === 0) return { proposal, said };
  const chain = (refs: readonly EdgeRef[]): EdgeRef[] =>
    refs.flatMap((ref) => {
      const ids = cuts.get(`${ref.piece} ${ref.edge}`);
      if (!ids) return [ref];
      return (ref.backwards ? ids.toReversed() : ids).map((edge) => ({ ...ref, edge }));
    });
  const both = <T extends Sewn>(seam: T): T => turned({ ...seam, a: chain(seam.a), b: chain(seam.b) });
  return {
    proposal: {
      ...proposal,
      pieces,
      seams: proposal.seams.map(both),
      followers: proposal.followers.map((one) => ({
        ...one,
        edges: one.edges.flatMap((edge) => {
          const own = cuts.get(`${one.piece} ${edge.own}`);
          const parent = cuts.get(`${one.parent} ${edge.parent}`);
          if (own && parent) return own.map((id, i) => ({ ...edge, own: id, parent: parent[i]! }));
          return own ? own.map((id) => ({ ...edge, own: id })) : [edge];
        }),
      })),
    },
    said: {
      ...said,
      ...(said.seams?.add ? { seams: { ...said.seams, add: said.seams.add.map(both) } } : {}),
      pieces: Object.fromEntries(
        Object.entries(said.pieces ?? {}).map(([id, one]) => [
          id,
          one.edges ? { ...one, edges: saidOfParts(id, one.edges, cuts) } : one,
        ]),
      ),
    },
  };
}

/** What was said of an edge holds for both its parts; only which half it is no longer is one answer. */
function saidOfParts(
  piece: string,
  edges: Readonly<Record<string, EdgeCorrection>>,
  cuts: Cuts,
): Record<string, EdgeCorrection> {
  return Object.fromEntries(
    Object.entries(edges).flatMap(([id, own]) => {
      const ids = cuts.get(`${piece} ${id}`);
      if (!ids) return [[id, own] as const];
      const { half: _, ...rest } = own;
      return ids.map((part) => [part, rest] as const);
    }),
  );
}
