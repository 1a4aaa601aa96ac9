import type { DrawnPiece, Edge, PieceId } from '../garment/index.ts';

/** The id that a piece had before it was parted into a left and a right one; its own id where it never was. */
export const wholeId = (id: PieceId): PieceId => id.replace(/-(?:left|right)$/, '');

/** How many parts of the garment one drawn outline stands for: cut twice, or doubled by the fold it is cut on. */
export function timesCut(piece: {
  readonly cut: DrawnPiece['cut'];
  readonly edges: readonly { readonly kind: Edge<'one'>['kind'] }[];
}): number {
  return piece.cut.count * (piece.edges.some((e) => e.kind === 'fold') ? 2 : 1);
}
