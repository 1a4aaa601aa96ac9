import { sideOf, edgesOf } from '../../garment/index.ts';
import { draw } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { pullEdges } from '../move/pull.ts';
import { withEdge } from '../role/roles.ts';

/**
 * Shoulder tip and whole armhole moved up (down) by `mm`, nothing at the neck: the armhole goes rigidly, so its size is kept (trade.md 5.4).
 * `side`: only the pieces of that body side.
 */
export function slopeShoulder(change: Change, mm: number, side?: 'left' | 'right'): void {
  const by = { x: 0, y: mm };
  for (const half of ['front', 'back'] as const) {
    withEdge(change.garment, half, 'shoulder');
    for (const panel of withEdge(change.garment, half, 'armhole')) {
      if (side && sideOf(panel) !== side) continue;
      draw(change, panel.id, (piece) =>
        pullEdges(
          piece,
          edgesOf(piece, 'armhole').flatMap((e) => [
            { edge: e.id, at: 0, by },
            { edge: e.id, at: 1, by },
          ]),
        ),
      );
    }
  }
}
