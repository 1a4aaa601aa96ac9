import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyPath, anyPoint } from './any.test-case.ts';
import {
  distance,
  linePath,
  movePoint,
  nearestPlace,
  pathBetween,
  pathBox,
  pathFlatten,
  pathIsStraight,
  pathJoin,
  pathReflect,
  pathSplit,
  placeCurvature,
  placePoint,
  placeTangent,
  pointsBox,
  polylinePath,
  reflectPoint,
  throughPoints,
  turnAbout,
} from './index.ts';

const bend = throughPoints([
  { x: 0, y: 0 },
  { x: 60, y: 20 },
  { x: 80, y: 90 },
]);

describe('joining paths', () => {
  it('keeps every point and does not double the joint', () => {
    const a = linePath({ x: 0, y: 0 }, { x: 9, y: 0 });
    const b = linePath({ x: 9, y: 0 }, { x: 9, y: 9 });
    expect(pathJoin([a, b])).toHaveLength(7);
    expect(pathJoin([a, b])).toEqual(polylinePath([a[0]!, b[0]!, b[3]!]));
  });

  it('refuses a gap instead of closing it in silence', () => {
    const a = linePath({ x: 0, y: 0 }, { x: 9, y: 0 });
    const b = linePath({ x: 9.1, y: 0 }, { x: 9, y: 9 });
    expect(() => pathJoin([a, b])).toThrow(RangeError);
    expect(() => pathJoin([])).toThrow(RangeError);
  });
});

describe('splitting a path', () => {
  it('at its very ends leaves a cubic of no length on the empty side', () => {
    const [before, after] = pathSplit(bend, { cubic: 0, t: 0 });
    expect(before.every((p) => p === bend[0])).toBe(true);
    expect(after).toEqual(bend);
    const [whole, nothing] = pathSplit(bend, { cubic: 1, t: 1 });
    expect(whole).toEqual(bend);
    expect(nothing.every((p) => p === bend[6])).toBe(true);
  });

  it('at a joint cuts between the cubics', () => {
    expect(pathSplit(bend, { cubic: 0, t: 1 })).toEqual([bend.slice(0, 4), bend.slice(3)]);
    expect(pathSplit(bend, { cubic: 1, t: 0 })).toEqual([bend.slice(0, 4), bend.slice(3)]);
  });

  it('leaves every point of a cut-out part on the curve it came from', () => {
    const part = pathBetween(bend, { cubic: 0, t: 0.3 }, { cubic: 1, t: 0.4 });
    for (const p of pathFlatten(part, 0.01)) expect(nearestPlace(bend, p).distance).toBeLessThan(0.011);
    expect(distance(part[0]!, placePoint(bend, { cubic: 0, t: 0.3 }))).toBeLessThan(1e-9);
  });
});

describe('a straight path', () => {
  it('is known as such, one that strays or turns back is not', () => {
    expect(pathIsStraight(polylinePath([0, 3, 10].map((x) => ({ x, y: 2 * x }))))).toBe(true);
    expect(pathIsStraight(bend)).toBe(false);
    expect(pathIsStraight(polylinePath([0, 10, 3, 20].map((x) => ({ x, y: 0 }))))).toBe(false);
  });
});

describe('moving', () => {
  it('mirrors first, then turns, then shifts', () => {
    const p = movePoint({ x: 1, y: 0 }, { mirror: true, angle: Math.PI / 2, dx: 10, dy: 20 });
    expect(distance(p, { x: 10, y: 19 })).toBeLessThan(1e-12);
  });

  it('about a centre leaves the centre where it is', () => {
    fc.assert(
      fc.property(anyPoint, fc.double({ min: -7, max: 7, noNaN: true }), (centre, angle) => {
        expect(distance(movePoint(centre, turnAbout(centre, angle)), centre)).toBeLessThan(1e-9);
      }),
    );
  });

  it('twice across the same line comes back', () => {
    fc.assert(
      fc.property(anyPath, anyPoint, anyPoint, (path, at, direction) => {
        fc.pre(Math.hypot(direction.x, direction.y) > 0.01);
        const back = pathReflect(pathReflect(path, at, direction), at, direction);
        back.forEach((p, i) => expect(distance(p, path[i]!)).toBeLessThan(1e-6));
      }),
    );
    expect(reflectPoint({ x: 3, y: 5 }, { x: 0, y: 1 }, { x: 2, y: 0 })).toEqual({ x: 3, y: -3 });
  });
});

describe('the box of a path', () => {
  it('is the box of its flattening, and never larger than that of its controls', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const box = pathBox(path);
        const flat = pointsBox(pathFlatten(path, 1e-3));
        const hull = pointsBox(path);
        for (const key of ['minX', 'minY', 'maxX', 'maxY'] as const) {
          expect(box[key]).toBeWithinMm(flat[key], 2e-3);
          const outside = key.startsWith('min') ? hull[key] - box[key] : box[key] - hull[key];
          expect(outside).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('flattening', () => {
  it('keeps within its tolerance and takes more points for a finer one', () => {
    for (const tolerance of [1, 0.1, 0.01]) {
      const points = pathFlatten(bend, tolerance);
      for (let i = 0; i + 1 < points.length; i++) {
        const chord = linePath(points[i]!, points[i + 1]!);
        const middle = { x: (chord[0]!.x + chord[3]!.x) / 2, y: (chord[0]!.y + chord[3]!.y) / 2 };
        expect(nearestPlace(bend, middle).distance).toBeLessThanOrEqual(tolerance);
      }
    }
    expect(pathFlatten(bend, 0.01).length).toBeGreaterThan(pathFlatten(bend, 1).length);
    expect(pathFlatten(linePath({ x: 0, y: 0 }, { x: 99, y: 1 }), 0.01)).toHaveLength(2);
  });
});

describe('the tangent and the curvature at a place', () => {
  it('are those of the curve, to the left positive', () => {
    const t = placeTangent(bend, { cubic: 0, t: 0.5 });
    const a = placePoint(bend, { cubic: 0, t: 0.4999 });
    const b = placePoint(bend, { cubic: 0, t: 0.5001 });
    expect(distance(t, { x: (b.x - a.x) / distance(a, b), y: (b.y - a.y) / distance(a, b) })).toBeLessThan(
      1e-6,
    );
    expect(placeCurvature(bend, { cubic: 0, t: 0.5 })).toBeGreaterThan(0);
    expect(placeCurvature(linePath({ x: 0, y: 0 }, { x: 5, y: 1 }), { cubic: 0, t: 0.5 })).toBe(0);
  });

  it('are told where a control sits on its end, and are nothing on a point', () => {
    const stub = [
      { x: 0, y: 0 },
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
    ];
    expect(placeTangent(stub, { cubic: 0, t: 0 })).toEqual({ x: 1, y: 0 });
    const p = { x: 1, y: 1 };
    expect(placeTangent([p, p, p, p], { cubic: 0, t: 0.5 })).toEqual({ x: 0, y: 0 });
  });
});

describe('the nearest place', () => {
  it('is never beaten by any point of the flattening', () => {
    fc.assert(
      fc.property(anyPath, anyPoint, (path, point) => {
        const found = nearestPlace(path, point);
        expect(distance(found.point, point)).toBeWithinMm(found.distance, 1e-9);
        for (const p of pathFlatten(path, 0.01)) {
          expect(found.distance).toBeLessThanOrEqual(distance(p, point) + 1e-9);
        }
      }),
      { numRuns: 300 },
    );
  });
});
