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
        because: `${pair!.apart ? 'runs beside' : 'repeats'} that edge of ${parent.name}`,
      };
    if (edge.kind === 'dart' || (own && !pair!.apart)) return edge;
    if (follower.role !== 'facing' || edge.kind === 'fold') return edge;
    return {
      ...edge,
      role: 'free-outer',
      confidence: parent.confidence ?? 0,
      because: `the edge of a facing that repeats nothing of ${parent.name}`,
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
    because: kind ? `called so; it follows ${parent.name}` : `follows ${parent.name}, whose role it has`,
    ...(parent.drawn ? { drawn: parent.drawn } : {}),
  };
}
