import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxesTouch, pointsBox } from '../geometry/index.ts';
import { GAP_MM, arrange } from './arrange.ts';
import type { Figure } from './drawing.ts';

const figure = (width: number, height: number, i: number): Figure => {
  const ring = [
    { x: 5, y: -7 },
    { x: 5 + width, y: -7 },
    { x: 5 + width, y: height - 7 },
    { x: 5, y: height - 7 },
  ];
  return { piece: `p${i}`, name: `p${i}`, ring, box: pointsBox(ring), strokes: [], words: [] };
};

const sizes = fc.array(fc.tuple(fc.integer({ min: 5, max: 300 }), fc.integer({ min: 5, max: 500 })), {
  minLength: 1,
  maxLength: 25,
});

describe('figures laid on sheets', () => {
  it('lie on the sheet, apart from one another, none lost', () => {
    fc.assert(
      fc.property(sizes, fc.boolean(), (all, endless) => {
        const figures = all.map(([w, h], i) => figure(w, h, i));
        const sheets = arrange(figures, 320, endless ? Infinity : 600);
        expect(sheets.flatMap((s) => s.figures.map((f) => f.piece)).sort()).toEqual(
          figures.map((f) => f.piece).sort(),
        );
        if (endless) expect(sheets).toHaveLength(1);
        for (const sheet of sheets) {
          if (!endless) expect(sheet.height).toBeLessThanOrEqual(600 + 1e-6);
          sheet.figures.forEach((f, i) => {
            expect(f.box.minX).toBeGreaterThan(-1e-6);
            expect(f.box.minY).toBeGreaterThan(-1e-6);
            expect(f.box.maxX).toBeLessThan(320 + 1e-6);
            expect(f.box.maxY).toBeLessThan(sheet.height + 1e-6);
            for (const other of sheet.figures.slice(i + 1)) {
              expect(boxesTouch(f.box, other.box, GAP_MM - 1e-6)).toBe(false);
            }
          });
        }
      }),
      { numRuns: 200 },
    );
  });

  it('refuses one that is wider than the sheet', () => {
    expect(() => arrange([figure(400, 10, 0)], 320, Infinity)).toThrow(RangeError);
  });
});
