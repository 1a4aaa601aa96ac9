import { distance, sub, unit } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { dartOf } from './dart.ts';
import { pullEdges } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';

/** A dart made wider (or narrower) at its mouth by `mm`, half on each leg; its point stays. Refusal `dart-too-small` when there is not that much in it. */
export function changeIntake(piece: DrawnPiece, id: string, mm: number): DrawnPiece {
  const { dart, a, b } = dartOf(piece, id);
  const intake = distance(a, b);
  if (intake + mm < 1) {
    throw new Refusal(
      'dart-too-small',
      { piece: piece.name, dart: dart.name, has: intake, asked: -mm },
      { piece: piece.id, edge: dart.legs[0] },
      mm,
    );
  }
  const apart = unit(sub(b, a));
  return pullEdges(piece, [
    { edge: dart.legs[0], at: 0, by: { x: (-apart.x * mm) / 2, y: (-apart.y * mm) / 2 } },
    { edge: dart.legs[1], at: 1, by: { x: (apart.x * mm) / 2, y: (apart.y * mm) / 2 } },
  ]);
}

/** The piece's darts whose mouth lies on a level. */
export const dartsAt = (piece: DrawnPiece, level: string): string[] =>
  piece.darts.filter((d) => piece.edges.find((e) => e.id === d.legs[0])?.from === level).map((d) => d.id);
