import type { DrawnPiece, Edge, EdgeRef, Garment, PieceId } from '../garment/index.ts';

/** One edge as found on the garment. */
export interface FoundEdge {
  readonly piece: DrawnPiece;
  readonly edge: Edge<'one'>;
  /** Its place in the piece's outline. */
  readonly index: number;
}

/** The piece of that id, or undefined. Every truing move makes a new list, so that looking along it is cheaper than an index of it. */
export function pieceOf(garment: Garment, id: PieceId): DrawnPiece | undefined {
  for (const piece of garment.pieces) if (piece.id === id) return piece;
  return undefined;
}

/** The edge a seam speaks of, or undefined where the garment has none such. */
export function edgeOf(garment: Garment, ref: EdgeRef): FoundEdge | undefined {
  const piece = pieceOf(garment, ref.piece);
  const index = piece?.edges.findIndex((e) => e.id === ref.edge) ?? -1;
  if (!piece || index < 0) return undefined;
  return { piece, edge: piece.edges[index]!, index };
}

/** The id that a piece had before it was parted into a left and a right one; its own id where it never was. */
export const wholeId = (id: PieceId): PieceId => id.replace(/-(?:left|right)$/, '');

/** How many parts of the garment one drawn outline stands for: cut twice, or doubled by the fold it is cut on. */
export function timesCut(piece: {
  readonly cut: DrawnPiece['cut'];
  readonly edges: readonly { readonly kind: Edge<'one'>['kind'] }[];
}): number {
  return piece.cut.count * (piece.edges.some((e) => e.kind === 'fold') ? 2 : 1);
}
