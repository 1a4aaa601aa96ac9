import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyPath, anyPoint, anyShape } from './any.test-case.ts';
import {
  linePath,
  pathEnd,
  pathStart,
  pathsArea,
  pathsRing,
  ringArea,
  ringContains,
  ringsDifference,
  ringsFilled,
  ringsIntersect,
  ringsUnion,
} from './index.ts';

const square = (x: number, y: number, size: number) => [
  { x, y },
  { x: x + size, y },
  { x: x + size, y: y + size },
  { x, y: y + size },
];

describe('area', () => {
  it('is positive counter-clockwise, negative clockwise, nothing for nothing', () => {
    expect(ringArea(square(5, 5, 10))).toBe(100);
    expect(ringArea(square(5, 5, 10).toReversed())).toBe(-100);
    expect(ringArea([])).toBe(0);
    expect(pathsArea([])).toBe(0);
  });

  it('of curves is what their fine flattening tends to', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const outline = [path, linePath(pathEnd(path), pathStart(path))];
        const ring = ringArea(pathsRing(outline, 1e-4));
        expect(Math.abs(pathsArea(outline) - ring)).toBeLessThan(1 + 1e-4 * Math.abs(ring));
      }),
      { numRuns: 200 },
    );
  });
});

describe('inside', () => {
  it('counts the border, and is decided exactly', () => {
    const ring = square(0, 0, 10);
    expect(ringContains(ring, { x: 5, y: 5 })).toBe(true);
    expect(ringContains(ring, { x: 10, y: 3 })).toBe(true);
    expect(ringContains(ring, { x: 0, y: 0 })).toBe(true);
    expect(ringContains(ring, { x: 10 + 2e-15, y: 3 })).toBe(false);
    expect(ringContains(ring, { x: -1, y: 10 })).toBe(false);
  });

  it('agrees with the region it came from', () => {
    fc.assert(
      fc.property(anyShape, anyPoint, (shape, p) => {
        const tiny = square(p.x - 0.01, p.y - 0.01, 0.02);
        const common = ringsIntersect([shape], [tiny]).reduce((sum, r) => sum + ringArea(r), 0);
        if (common < 1e-5) expect(ringContains(shape, p)).toBe(false);
        if (common > 3.9e-4) expect(ringContains(shape, p)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });
});

describe('regions', () => {
  it('obey area(a) + area(b) = area(a ∪ b) + area(a ∩ b)', () => {
    fc.assert(
      fc.property(anyShape, anyShape, anyPoint, (a, b, by) => {
        const moved = b.map((p) => ({ x: p.x + by.x, y: p.y + by.y }));
        const area = (rings: readonly (typeof a)[]) => rings.reduce((sum, r) => sum + ringArea(r), 0);
        const both =
          area(ringsUnion([a], [moved]) as (typeof a)[]) + area(ringsIntersect([a], [moved]) as (typeof a)[]);
        expect(Math.abs(both - area([a, moved]))).toBeLessThan(1);
        const less = area(ringsDifference([a], [moved]) as (typeof a)[]);
        expect(
          Math.abs(less + area(ringsIntersect([a], [moved]) as (typeof a)[]) - ringArea(a)),
        ).toBeLessThan(1);
      }),
      { numRuns: 100 },
    );
  });

  it('give holes clockwise', () => {
    const rings = ringsDifference([square(0, 0, 30)], [square(10, 10, 10)]);
    expect(rings.map((r) => Math.sign(ringArea(r))).sort()).toEqual([-1, 1]);
  });

  it('drop the loop that turns the wrong way', () => {
    const bow = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 0, y: 10 },
      { x: 10, y: 10 },
    ];
    const kept = ringsFilled(bow);
    expect(kept).toHaveLength(1);
    expect(ringArea(kept[0]!)).toBeCloseTo(25, 6);
  });
});
