import { edgeAt, pieceAt, type Finding, type Pattern } from '../garment/index.ts';
import { putEdge, putPiece } from './edit-pattern.ts';

/** A piece, or one of its edges. */
type Place = Pick<Finding['where'], 'piece' | 'edge'>;

/** What it was taken for, said by a person to be right; a place of which nothing is known stays as it is. */
export function asTaken(pattern: Pattern, { piece: id, edge }: Place): Pattern {
  if (id === undefined) return pattern;
  if (edge === undefined) {
    const role = pieceAt(pattern, id)?.role;
    return role ? putPiece(pattern, id, { role }) : pattern;
  }
  const role = edgeAt(pattern, { piece: id, edge })?.edge.role;
  return role ? putEdge(pattern, id, edge, { role }) : pattern;
}

type Answered = { readonly role?: string; readonly half?: string; readonly unsure?: true };

/** The answer to what is in doubt, where there is one. */
function answer<T extends Answered>(doubted: T, said: T | undefined): Pick<T, 'role' | 'half'> | undefined {
  if (!doubted.unsure || !said || said.unsure || said.role === undefined) return undefined;
  return { role: said.role, ...(said.half === undefined ? {} : { half: said.half }) };
}

/**
 * A copy of a pattern with the answers that were given since to what is in doubt in it, by the ids of pieces and edges; the same object
 * where there are none. What was never in doubt in the copy stays as it is.
 */
export function answersFrom(copy: Pattern, said: Pattern): Pattern {
  let after = copy;
  for (const piece of copy.pieces) {
    const other = pieceAt(said, piece.id);
    const own = answer(piece, other);
    if (own) after = putPiece(after, piece.id, own);
    for (const edge of piece.edges) {
      const its = answer(
        edge,
        other?.edges.find(({ id }) => id === edge.id),
      );
      if (its) after = putEdge(after, piece.id, edge.id, its);
    }
  }
  return after;
}
