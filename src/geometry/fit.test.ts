import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyShape } from './any.test-case.ts';
import {
  angleBetween,
  cubicCount,
  distance,
  fitPath,
  nearestPlace,
  pathFlatten,
  pathIsStraight,
  pathLength,
  placeCurvature,
  placeTangent,
  throughPoints,
} from './index.ts';

describe('fitting cubics to points', () => {
  it('keeps within its tolerance of every point, in mm and not in square mm', () => {
    fc.assert(
      fc.property(anyShape, fc.constantFrom(0.5, 0.05, 0.01), (shape, tolerance) => {
        const points = pathFlatten(throughPoints(shape), 0.02);
        const fit = fitPath(points, tolerance);
        for (const p of points) expect(nearestPlace(fit, p).distance).toBeLessThanOrEqual(tolerance + 1e-9);
        expect(fit[0]).toEqual(points[0]);
        expect(fit[fit.length - 1]).toEqual(points[points.length - 1]);
      }),
      { numRuns: 60 },
    );
  });

  it('is smooth where its cubics join', () => {
    const points = Array.from({ length: 200 }, (_, i) => ({ x: i, y: 30 * Math.sin(i / 20) }));
    const fit = fitPath(points, 0.02);
    expect(cubicCount(fit)).toBeGreaterThan(2);
    for (let i = 1; i < cubicCount(fit); i++) {
      const before = placeTangent(fit, { cubic: i - 1, t: 1 });
      const after = placeTangent(fit, { cubic: i, t: 0 });
      expect(Math.abs(angleBetween(before, after))).toBeLessThan(1e-9);
    }
  });

  it('takes one cubic for points of one cubic, and keeps the tangents it is given', () => {
    const cubic = throughPoints(
      [
        { x: 0, y: 0 },
        { x: 90, y: 40 },
      ],
      { startTangent: { x: 1, y: 0 }, endTangent: { x: 0, y: 1 } },
    );
    const fit = fitPath(pathFlatten(cubic, 0.01), 0.02, {
      startTangent: { x: 9, y: 0 },
      endTangent: { x: 0, y: 2 },
    });
    expect(cubicCount(fit)).toBe(1);
    expect(fit[1]!.y).toBe(0);
    expect(fit[2]!.x).toBeWithinMm(90, 1e-9);
    expect(pathLength(fit)).toBeWithinMm(pathLength(cubic), 0.02);
  });

  it('makes a straight run of points in a line', () => {
    const fit = fitPath(
      [0, 1, 5, 5, 70].map((x) => ({ x, y: x / 2 })),
      0.05,
    );
    expect(pathIsStraight(fit)).toBe(true);
    expect(cubicCount(fit)).toBe(1);
  });

  it('needs two points', () => {
    expect(() =>
      fitPath(
        [
          { x: 1, y: 1 },
          { x: 1, y: 1 },
        ],
        0.1,
      ),
    ).toThrow(RangeError);
  });
});

describe('the smooth path through points', () => {
  it('goes through every one, with direction and curvature running on', () => {
    fc.assert(
      fc.property(anyShape, (shape) => {
        const path = throughPoints(shape);
        shape.forEach((p, i) => expect(distance(p, path[3 * i]!)).toBe(0));
        for (let i = 1; i < cubicCount(path); i++) {
          const before = { cubic: i - 1, t: 1 };
          const after = { cubic: i, t: 0 };
          expect(Math.abs(angleBetween(placeTangent(path, before), placeTangent(path, after)))).toBeLessThan(
            1e-6,
          );
          // Radii below a centimetre are not told apart by this measure.
          expect(Math.abs(placeCurvature(path, before) - placeCurvature(path, after))).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('starts and ends the way it is told', () => {
    const path = throughPoints(
      [
        { x: 0, y: 0 },
        { x: 40, y: 50 },
        { x: 90, y: 60 },
      ],
      { startTangent: { x: 0, y: 7 }, endTangent: { x: 3, y: 0 } },
    );
    expect(path[1]!.x).toBeWithinMm(0, 1e-12);
    expect(path[path.length - 2]!.y).toBeWithinMm(60, 1e-12);
  });

  it('is the straight line through two free points', () => {
    expect(
      pathIsStraight(
        throughPoints([
          { x: 0, y: 0 },
          { x: 9, y: 3 },
        ]),
      ),
    ).toBe(true);
  });

  it('refuses equal neighbours and a single point', () => {
    expect(() => throughPoints([{ x: 0, y: 0 }])).toThrow(RangeError);
    expect(() =>
      throughPoints([
        { x: 0, y: 0 },
        { x: 0, y: 0 },
      ]),
    ).toThrow(RangeError);
  });
});
