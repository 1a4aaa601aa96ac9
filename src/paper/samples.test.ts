import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { garmentAtSize } from '../garment/index.ts';
import type { EdgeKind } from '../garment/index.ts';
import { nearestPlace, pathAt, pathsArea, ringArea } from '../geometry/index.ts';
import { SAMPLES, sample } from '../samples/index.ts';
import { cuttingOutline, sewingOrder } from '../cut/index.ts';
import { readPaper } from './paper-size.ts';
import { CHOICES, garmentOf, straightPiece } from '../../test/hand-piece.ts';
import { printPages } from './sheet.ts';

/** Loops at bends tighter than the allowance: a notch of cloth this small is below what shears can follow. */
const LOOP_MM2 = 1;

describe('every sample in every size', () => {
  it.each(SAMPLES.map((s) => s.id))(
    '%s: its cutting lines lie their allowance away, round every dart',
    (id) => {
      const pattern = sample(id)!;
      let measured = 0;
      pattern.chart.sizes.forEach((_, size) => {
        const garment = garmentAtSize(pattern, size);
        const order = sewingOrder(garment.seams);
        for (const piece of garment.pieces) {
          const cutting = cuttingOutline(piece, order);
          const where = `${piece.id}, size ${size}`;
          expect(cutting.looped, where).toBeLessThan(LOOP_MM2);
          expect(ringArea(cutting.outline), where).toBeGreaterThan(pathsArea(piece.edges.map((e) => e.path)));
          for (const side of cutting.sides) {
            for (const share of [0.2, 0.35, 0.5, 0.65, 0.8]) {
              const off = nearestPlace(side.cut, pathAt(side.stitch, share)).distance;
              expect(off, `${where}, ${side.edge ?? side.dart}`).toBeWithinMm(side.width, 0.05);
              measured++;
            }
          }
        }
      });
      expect(measured).toBeGreaterThan(100);
    },
  );
});

describe('pieces no one would cut', () => {
  it('are drawn all the same, crossed or needle-thin, every number finite', () => {
    const coordinate = fc.integer({ min: 0, max: 60_000 }).map((v) => v / 100);
    const corner = fc.record({ x: coordinate, y: coordinate });
    const kind = fc.constantFrom<EdgeKind>('seam', 'hem', 'free', 'opening', 'fold');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(corner, kind, fc.integer({ min: 0, max: 60 })), { minLength: 3, maxLength: 8 }),
        (sides) => {
          const piece = straightPiece(
            'odd',
            sides.map(([p]) => p),
            sides.map(([, k]) => k),
            sides.map(([, , w]) => w),
          );
          const { pages } = printPages(garmentOf(piece), CHOICES, readPaper('a4'));
          expect(pages.length).toBeGreaterThan(0);
          for (const page of pages) {
            for (const s of [...page.drawn.strokes, ...page.furniture.strokes]) {
              for (const p of s.path)
                if (!Number.isFinite(p.x + p.y)) throw new Error(`not finite on ${s.layer}`);
            }
            for (const w of page.drawn.words) expect(Number.isFinite(w.at.x + w.at.y + w.size)).toBe(true);
          }
        },
      ),
      { numRuns: 150 },
    );
  });
});
