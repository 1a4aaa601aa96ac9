import type { Half } from '../../garment/index.ts';
import { draw } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { pullEdges } from '../move/pull.ts';
import { waistRise } from './waist-rise.ts';
import { movableAt, needLevel, widenLevel } from './widen-level.ts';

/** Length at the centre and width at the side edges of one half, over the abdomen or the seat: the width sits at the hip and runs on below it. */
export function overCurve(change: Change, half: Half, length: number, width: number): void {
  if (length !== 0) waistRise(change, half, length, 0);
  if (width === 0) return;
  const level =
    ['hip', 'high-hip', 'waist'].find((l) => movableAt(change.garment, half, 'side', l).edges > 0) ?? 'hip';
  const found = movableAt(change.garment, half, 'side', level);
  needLevel(found.edges, 'side', level);
  for (const panel of found.pieces) {
    draw(change, panel.id, (piece) =>
      pullEdges(piece, widenLevel(piece, 'side', level, width / found.edges, { below: true })),
    );
  }
}
