import { cuttingOutline, sewingOrder } from '../../cut/index.ts';
import type { Cloth, DrawnPiece, Garment } from '../../garment/index.ts';
import { timesTurned } from '../../garment/index.ts';
import { pathEnd, pathStart, pointsBox } from '../../geometry/index.ts';
import type { Point, Ring } from '../../geometry/index.ts';
import type { CuttingPiece } from './lay-job.ts';

/** The pieces of a garment as they are cut, ready to lay: outlines with allowances, how often, fold and grain. All cloths, or one. */
export function cuttingPieces(garment: Garment, cloth?: Cloth): CuttingPiece[] {
  const order = sewingOrder(garment.seams);
  return garment.pieces
    .filter((piece) => cloth === undefined || piece.cloth === cloth)
    .map((piece) => cuttingPiece(piece, cuttingOutline(piece, order).outline));
}

/**
 * A drawn piece with its cutting outline.
 * The grain is its grainline, from its lower to its upper end; upright where none is drawn. A piece with several fold edges keeps the longest.
 */
function cuttingPiece(piece: DrawnPiece, outline: Ring): CuttingPiece {
  const grain = piece.lines.find((l) => l.kind === 'grain');
  const folds = piece.edges
    .filter((e) => e.kind === 'fold')
    .map((e): readonly [Point, Point] => [pathStart(e.path), pathEnd(e.path)])
    .sort((a, b) => span(b) - span(a));
  const box = pointsBox(outline);
  const middle = (box.minX + box.maxX) / 2;
  const ends: readonly [Point, Point] = grain
    ? upward(pathStart(grain.path), pathEnd(grain.path))
    : [
        { x: middle, y: box.minY + (box.maxY - box.minY) * 0.25 },
        { x: middle, y: box.minY + (box.maxY - box.minY) * 0.75 },
      ];
  return {
    piece: piece.id,
    name: piece.name,
    number: piece.number,
    cloth: piece.cloth,
    outline,
    count: piece.worn.length,
    mirrored: timesTurned(piece) > 0,
    ...(folds[0] ? { fold: folds[0] } : {}),
    grain: ends,
  };
}

const span = ([a, b]: readonly [Point, Point]): number => Math.hypot(b.x - a.x, b.y - a.y);

/** A grainline drawn downwards is the same thread; one across the piece is read from left to right. */
const upward = (a: Point, b: Point): readonly [Point, Point] =>
  b.y > a.y || (b.y === a.y && b.x > a.x) ? [a, b] : [b, a];
