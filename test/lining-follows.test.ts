import { describe, expect, it } from 'vitest';
import { distance, pathAt, pathMove } from '../src/geometry/index.ts';
import type { DrawnPiece, Garment } from '../src/garment/index.ts';
import { garmentAtSize } from '../src/garment/index.ts';
import { sample } from '../src/samples/index.ts';
import { applyStep } from '../src/alter/index.ts';

/** A skirt whose linings lie so far beside it, as two traced pieces do, mm. */
function besides(mm: number): Garment {
  const skirt = garmentAtSize(sample('a-line-skirt'), 4);
  const linings = new Set(skirt.followers.map(({ piece }) => piece));
  const aside = { angle: 0, dx: mm, dy: 0 };
  return {
    ...skirt,
    pieces: skirt.pieces.map((piece): DrawnPiece =>
      linings.has(piece.id)
        ? { ...piece, edges: piece.edges.map((edge) => ({ ...edge, path: pathMove(edge.path, aside) })) }
        : piece,
    ),
  };
}

describe('a lining', () => {
  it.each([0, 0.4])('goes with the side seam all along it, drawn %s mm beside it', (mm) => {
    const params = { level: 'hip', total: 25 };
    const { garment } = applyStep(besides(mm), { id: 's', kind: 'alter', entry: 'width-seams', params });
    const side = (id: string) =>
      garment.pieces.find((piece) => piece.id === id)!.edges.find((edge) => edge.id === 'side')!.path;
    const [skirt, lining] = [side('front'), side('front-lining')];
    for (const share of [0.3, 0.5, 0.7, 0.9]) {
      const off = Math.min(
        ...Array.from({ length: 400 }, (_, i) => distance(pathAt(lining, share), pathAt(skirt, i / 399))),
      );
      expect(off).toBeLessThan(1);
    }
  });
});
