import { middleOf } from '../../garment/index.ts';
import { movePoint, nearestPlace, pathEnd, pathStart, shareAtPlace } from '../../geometry/index.ts';
import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import { cutEdge } from './cut-edge.ts';
import { isOpeningPiece } from './follower.ts';
import { languageOf } from './words/piece-sense.ts';
import type { ProposedEdge, ProposedFollower, ProposedPiece } from './proposal.ts';

/** An opening ends between these shares of the edge: what is left is more than a rounding or an allowance. */
const LEAST = 0.15;
const MOST = 0.85;

/**
 * A fly, a zip or a placket ends half way along an edge that runs on smoothly, so that no corner shows it: its facing does. Cuts each
 * such edge in two, an opening and what is sewn, and gives the followers' edges their new parents.
 */
export function splitAtOpenings(
  pieces: readonly ProposedPiece[],
  followers: readonly ProposedFollower[],
): { pieces: ProposedPiece[]; followers: ProposedFollower[] } {
  const language = languageOf(pieces.map((piece) => piece.name));
  let split = [...pieces];
  let moved = [...followers];
  for (const follower of followers) {
    const piece = pieces.find((one) => one.id === follower.piece)!;
    if (!isOpeningPiece(piece, language)) continue;
    for (const pair of follower.edges) {
      const parent = split.find((one) => one.id === follower.parent)!;
      const own = piece.edges.find((edge) => edge.id === pair.own)!;
      const edge = parent.edges.find((one) => one.id === pair.parent);
      if (pair.apart || !edge || !isLengthwise(own, piece)) continue;
      const cut = partOf(own, edge, follower);
      if (!cut) continue;
      const opens = { kind: 'opening', evidence: SAY['opening-of']({ piece: piece.name }) } as const;
      const rest = { kind: edge.kind, evidence: SAY['rest-of']({ piece: piece.name }) };
      const made = cutEdge(parent, edge, cut.at, cut.first ? [opens, rest] : [rest, opens]);
      split = split.map((one) => (one === parent ? made.piece : one));
      const opening = (ref: { own: string; parent: string }) => ({
        ...ref,
        parent: made.ids[cut.first ? 0 : 1],
      });
      moved = moved.map((one) =>
        one.parent === parent.id
          ? { ...one, edges: one.edges.map((ref) => (ref.parent === edge.id ? opening(ref) : ref)) }
          : one,
      );
    }
  }
  return { pieces: split, followers: moved };
}

/** The long edge of a facing follows the opening; a short one lies on the waist. */
function isLengthwise(own: ProposedEdge, piece: ProposedPiece): boolean {
  const m = middleOf(own.lengths.length);
  return own.lengths[m]! > 0.75 * Math.max(...piece.edges.map((edge) => edge.lengths[m]!));
}

interface Cut {
  /** Share of the edge at which the opening ends, per size. */
  readonly at: readonly number[];
  /** The opening is the edge's first part. */
  readonly first: boolean;
}

/** Where in every size the follower's edge ends on its parent's; null where it covers it or lies in its middle. */
function partOf(own: ProposedEdge, edge: ProposedEdge, { onto }: ProposedFollower): Cut | null {
  const shares = own.paths.map((path, k) => {
    const [a, b] = [pathStart(path), pathEnd(path)].map((point) => {
      const target = edge.paths[k]!;
      return shareAtPlace(target, nearestPlace(target, movePoint(point, onto[k]!)).place);
    }) as [number, number];
    return [Math.min(a, b), Math.max(a, b)] as const;
  });
  const inside = (share: number) => share > LEAST && share < MOST;
  if (shares.every(([low, high]) => low < 0.01 && inside(high)))
    return { at: shares.map(([, high]) => high), first: true };
  if (shares.every(([low, high]) => high > 0.99 && inside(low)))
    return { at: shares.map(([low]) => low), first: false };
  return null;
}
