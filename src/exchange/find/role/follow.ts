import { EVIDENCE_WORDS as SAY } from '../../words/evidence-table.ts';
import type { ProposedEdge, ProposedFollower, ProposedPiece } from '../proposal.ts';
import type { Words } from './word-cost.ts';

/**
 * A facing or lining has the role and half of what it follows, and each edge that of the edge it repeats. What it does not repeat of a facing is
 * its free edge; a lining's shorter hem is a hem all the same.
 */
export function followParent(
  piece: ProposedPiece,
  follower: ProposedFollower,
  parent: ProposedPiece,
  words: Words,
): ProposedPiece {
  const edges = piece.edges.map((edge): ProposedEdge => {
    const pair = follower.edges.find((one) => one.own === edge.id);
    const own = pair && parent.edges.find((one) => one.id === pair.parent);
    if (own?.role && (!pair!.apart || follower.role === 'lining' || follower.role === 'interfacing'))
      return {
        ...edge,
        role: own.role,
        ...(own.also ? { also: own.also } : {}),
        ...(own.half ? { half: own.half } : {}),
        confidence: own.confidence ?? 0,
        because: SAY['repeats-parent']({ parent: parent.name, beside: pair!.apart ?? false }),
      };
    if (edge.kind === 'dart' || (own && !pair!.apart)) return edge;
    if (follower.role !== 'facing' || edge.kind === 'fold') return edge;
    return {
      ...edge,
      role: 'free-outer',
      confidence: parent.confidence ?? 0,
      because: SAY['facing-free']({ parent: parent.name }),
    };
  });
  const kind = words.roles.find(
    (role) => role === 'fly-shield' || role === 'pocket-bag' || role === 'pocket',
  );
  if (!parent.role && !kind) return { ...piece, edges };
  return {
    ...piece,
    edges,
    role: kind ?? parent.role!,
    ...(parent.half ? { half: parent.half } : {}),
    confidence: parent.confidence ?? 0,
    because: SAY['follows-parent']({ parent: parent.name, named: kind !== undefined }),
    ...(parent.drawn ? { drawn: parent.drawn } : {}),
  };
}
