import { describe, expect, it } from 'vitest';
import { garmentAtSize } from '../../garment/index.ts';
import { movePoint, ringContains, pathFlatten, type Point } from '../../geometry/index.ts';
import { sample } from '../../samples/index.ts';
import { chainOf, seatSeam } from './seat.ts';

const bodice = garmentAtSize(sample('stage-bodice'), 4);
const ringOf = (piece: (typeof bodice.pieces)[number]): Point[] =>
  piece.edges.flatMap((e) => pathFlatten(e.path, 0.05).slice(0, -1));

describe('two pieces put edge to edge', () => {
  it('pins the walked points of both sides on one spot, for every seam and anywhere along it', () => {
    for (const seam of bodice.seams) {
      for (const share of [0, 0.21, 0.5, 0.83, 1]) {
        const seated = seatSeam(bodice, seam, share, true)!;
        const b = chainOf(bodice, seam.b);
        const leg = b.findLast((l) => l.from <= seated.walkedB + 1e-9)!;
        expect(seated.b.piece.id).toBe(leg.piece.id);
        const start = movePoint(leg.path[0]!, seated.b.motion);
        const gone = Math.hypot(start.x - seated.at.x, start.y - seated.at.y);
        // A rolled edge can be no further from the pin than what was walked of it: it is an arc's chord.
        expect(gone).toBeLessThanOrEqual(seated.walkedB - leg.from + 0.01);
      }
    }
  });

  it('lays the second piece on the other side of the line, never over the first', () => {
    const seam = bodice.seams.find(
      (s) =>
        s.join.kind === 'plain' && s.a.length === 1 && s.b.length === 1 && s.a[0]!.piece !== s.b[0]!.piece,
    )!;
    const seated = seatSeam(bodice, seam, 0.5, true)!;
    const first = ringOf(seated.a[0]!.piece).map((p) => movePoint(p, seated.a[0]!.motion));
    const second = ringOf(seated.b.piece).map((p) => movePoint(p, seated.b.motion));
    const middle = (ring: readonly Point[]): Point => ({
      x: ring.reduce((s, p) => s + p.x, 0) / ring.length,
      y: ring.reduce((s, p) => s + p.y, 0) / ring.length,
    });
    expect(ringContains(first, middle(second))).toBe(false);
    expect(ringContains(second, middle(first))).toBe(false);
  });
});
