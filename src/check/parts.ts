import { pieceAt } from '../garment/index.ts';
import type { DrawnPiece, Garment, PieceId } from '../garment/index.ts';

/** The id of the piece that this one was parted from; its own where it never was. */
export const wholeOf = (piece: DrawnPiece): PieceId => piece.of ?? piece.id;
/** The same by id. */
export const wholeId = (garment: Garment, id: PieceId): PieceId => pieceAt(garment, id)?.of ?? id;
