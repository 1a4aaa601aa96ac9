import { alterFinding } from '../words/words-table.ts';
import { pathEnd, pathStart } from '../../geometry/index.ts';
import { edgesOf } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { tell } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { makeDartOn } from '../follow/dart-change.ts';
import { easeSeams } from '../follow/dart-seams.ts';
import { chestLine } from './chest-line.ts';
import { slideHalf } from './slide-half.ts';
import { onFold, uprightCentre } from './upright-centre.ts';
import { isTurned, withEdge } from '../role/roles.ts';

/** Length of the neck dart that takes up what the neckline gained: usual for a back neck dart (common practice). */
const NECK_DART_MM = 75;

/**
 * The upper back raised by `mm` at the centre, nothing at the armhole seam (negative: lowered). On a fold the centre line is made upright again and what the neckline
 * gains goes into a neck dart or is eased; on a seam the lean stays as its shape.
 */
export function upperBackWedge(change: Change, mm: number, excess: 'dart' | 'ease'): void {
  const line = chestLine(change.garment, 'back');
  slideHalf(change, 'back', { line, centre: mm, side: 0, moves: 'above' });
  const off = uprightCentre(change, 'back', 'top', onFold).most;
  if (off === 0) {
    for (const piece of withEdge(change.garment, 'back', 'centre')) {
      const centre = edgesOf(piece, 'centre')[0]!;
      const lean = Math.abs(pathStart(centre.path).x - pathEnd(centre.path).x);
      if (lean < 1) continue;
      tell(
        change,
        alterFinding(
          'centre-shaped',
          'note',
          { piece: piece.id, edge: centre.id },
          { piece: piece.name, edge: centre.name },
          { amount: lean },
        ),
      );
    }
    return;
  }
  for (const piece of withEdge(change.garment, 'back', 'neck')) takeUp(change, piece, off, excess);
}

function takeUp(change: Change, piece: DrawnPiece, off: number, excess: 'dart' | 'ease'): void {
  const neck = edgesOf(piece, 'neck')[0]!;
  if (excess === 'dart' && off > 2) {
    const a = neckMiddle(piece);
    makeDartOn(change, piece.id, neck.id, 0.5, { x: a.x, y: a.y - NECK_DART_MM }, off, {
      id: 'neck-dart',
      say: 'neck dart',
      serves: 'neck',
    });
    return;
  }
  easeSeams(change, piece.id, [neck.id], off);
  tell(
    change,
    alterFinding(
      'neck-eased',
      Math.abs(off) > 13 ? 'warning' : 'note',
      { piece: piece.id, edge: neck.id },
      { piece: piece.name, off },
      { amount: off },
    ),
  );
}

function neckMiddle(piece: DrawnPiece): { x: number; y: number } {
  const neck = edgesOf(piece, 'neck')[0]!;
  const [a, b] = [pathStart(neck.path), pathEnd(neck.path)];
  const lean = isTurned(piece) ? -4 : 4;
  return { x: (a.x + b.x) / 2 + lean, y: (a.y + b.y) / 2 };
}
