import type { Cloth, Garment } from '../garment/index.ts';
import { cuttingPiece, type CuttingPiece } from '../layout/index.ts';
import { cuttingOutline, sewingOrder } from '../paper/index.ts';

/** The pieces as they are cut, ready to lay: outlines with allowances, how often, fold and grain. All cloths, or one. */
export function cuttingPieces(garment: Garment, cloth?: Cloth): CuttingPiece[] {
  const order = sewingOrder(garment.seams);
  return garment.pieces
    .filter((piece) => cloth === undefined || piece.cloth === cloth)
    .map((piece) => cuttingPiece(piece, cuttingOutline(piece, (edge) => order(piece.id, edge)).outline));
}
