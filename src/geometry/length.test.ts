import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyPath } from './any.test-case.ts';
import {
  distance,
  lengthAtPlace,
  linePath,
  pathAt,
  pathEnd,
  pathFlatten,
  pathLength,
  pathMove,
  pathPart,
  pathReverse,
  pathSplit,
  pathStart,
  placeAtLength,
  placeAtShare,
  shareAtPlace,
} from './index.ts';
import type { Path } from './index.ts';

describe('the length of a path', () => {
  it('is the distance on a straight one', () => {
    expect(pathLength(linePath({ x: 0, y: 0 }, { x: 30, y: 40 }))).toBeWithinMm(50, 1e-12);
  });

  it('is nothing on a path of no length, and its only place is its start', () => {
    const p = { x: 3, y: 4 };
    expect(pathLength([p, p, p, p])).toBe(0);
    expect(placeAtLength([p, p, p, p], 5)).toEqual({ cubic: 0, t: 1 });
    expect(pathAt([p, p, p, p], 0.5)).toEqual(p);
  });

  it('is never shorter than its flattening, and longer by no more than the flattening leaves out', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const points = pathFlatten(path, 1e-3);
        const chords = points.slice(1).reduce((sum, p, i) => sum + distance(points[i]!, p), 0);
        expect(pathLength(path)).toBeGreaterThanOrEqual(chords - 1e-6);
        expect(pathLength(path)).toBeLessThanOrEqual(chords * 1.01 + 0.05);
      }),
      { numRuns: 300 },
    );
  });

  it('is kept by reversing and by every rigid motion', () => {
    const motion = fc.record({
      angle: fc.double({ min: -7, max: 7, noNaN: true }),
      dx: fc.double({ min: -1000, max: 1000, noNaN: true }),
      dy: fc.double({ min: -1000, max: 1000, noNaN: true }),
      mirror: fc.boolean(),
    });
    fc.assert(
      fc.property(anyPath, motion, (path, by) => {
        expect(pathLength(pathMove(path, by))).toBeWithinMm(pathLength(path), 1e-5);
        expect(pathLength(pathReverse(path))).toBeWithinMm(pathLength(path), 1e-5);
      }),
      { numRuns: 300 },
    );
  });

  // Held to an absolute bound alone, the halving of a curve this long never ends.
  it('is as many times longer as the path is, up to what a damaged file may say', () => {
    const path = [
      { x: 0, y: 0 },
      { x: 10, y: 40 },
      { x: 60, y: -20 },
      { x: 90, y: 30 },
    ];
    const huge = path.map(({ x, y }) => ({ x: x * 1e14, y: y * 1e14 }));
    expect(pathLength(huge) / (1e14 * pathLength(path))).toBeCloseTo(1, 9);
  });

  it('is the sum of its parts, wherever it is cut', () => {
    fc.assert(
      fc.property(anyPath, fc.double({ min: 0, max: 1, noNaN: true }), (path, share) => {
        const place = placeAtShare(path, share);
        const [before, after] = pathSplit(path, place);
        expect(pathLength(before) + pathLength(after)).toBeWithinMm(pathLength(path), 1e-5);
        expect(pathLength(before)).toBeWithinMm(share * pathLength(path), 1e-5);
        expect(pathEnd(before)).toEqual(pathStart(after));
      }),
      { numRuns: 300 },
    );
  });
});

describe('a place along a path', () => {
  it('is found by its length, also on a cusp', () => {
    fc.assert(
      fc.property(anyPath, fc.double({ min: 0, max: 1, noNaN: true }), (path, share) => {
        const mm = share * pathLength(path);
        expect(lengthAtPlace(path, placeAtLength(path, mm))).toBeWithinMm(mm, 1e-5);
      }),
      { numRuns: 300 },
    );
    const cusp: Path = [
      { x: 0, y: 0 },
      { x: 100, y: 100 },
      { x: 0, y: 100 },
      { x: 100, y: 0 },
    ];
    expect(placeAtShare(cusp, 0.5).t).toBeCloseTo(0.5, 9);
    expect(shareAtPlace(cusp, { cubic: 0, t: 0.5 })).toBeCloseTo(0.5, 12);
  });

  it('is held to the ends', () => {
    const line = linePath({ x: 0, y: 0 }, { x: 10, y: 0 });
    expect(placeAtLength(line, -3)).toEqual({ cubic: 0, t: 0 });
    expect(placeAtLength(line, 11)).toEqual({ cubic: 0, t: 1 });
  });
});

describe('a part of a path', () => {
  it('runs backwards when asked from the greater share', () => {
    fc.assert(
      fc.property(
        anyPath,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (path, a, b) => {
          const part = pathPart(path, a, b);
          expect(pathLength(part)).toBeWithinMm(Math.abs(b - a) * pathLength(path), 1e-4);
          expect(distance(pathStart(part), pathAt(path, a))).toBeLessThan(1e-3);
          expect(distance(pathEnd(part), pathAt(path, b))).toBeLessThan(1e-3);
        },
      ),
      { numRuns: 300 },
    );
  });
});
