import type { DrawnPiece, NestedPiece } from '../piece.ts';
import type { Garment, Pattern } from '../pattern.ts';

function pick<T>(nest: readonly T[], size: number, of: { readonly name: string }, what: string): T {
  const one = nest[size];
  if (one === undefined) throw new RangeError(`${of.name}, ${what} has no size number ${size}`);
  return one;
}

/**
 * One size of a nested piece, as printed: no blending.
 * `size` is an index into the pattern's sizes; throws RangeError outside them.
 */
export function pieceAtSize(piece: NestedPiece, size: number): DrawnPiece {
  return {
    ...piece,
    edges: piece.edges.map((edge) => ({
      ...edge,
      path: pick(edge.path, size, piece, edge.name),
      crossings: edge.crossings.map((c) => ({ level: c.level, at: pick(c.at, size, piece, c.level) })),
      notches: edge.notches.map((n) => ({ ...n, at: pick(n.at, size, piece, n.id) })),
    })),
    lines: piece.lines.map((line) => ({ ...line, path: pick(line.path, size, piece, line.id) })),
    marks: piece.marks.map((mark) => ({ ...mark, at: pick(mark.at, size, piece, mark.id) })),
  };
}

/** The whole garment in one printed size, unblended. */
export function garmentAtSize(pattern: Pattern, size: number): Garment {
  return {
    pieces: pattern.pieces.map((piece) => pieceAtSize(piece, size)),
    seams: pattern.seams,
    followers: pattern.followers,
    bands: pattern.bands,
    levels: pattern.levels,
  };
}
