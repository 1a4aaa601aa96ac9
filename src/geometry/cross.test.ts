import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyPath, anyPoint } from './any.test-case.ts';
import {
  distance,
  linePath,
  pathFlatten,
  pathIntersections,
  pathLineIntersections,
  pathReverse,
  placePoint,
  polylinePath,
  side,
  throughPoints,
} from './index.ts';
import type { Path, Point } from './index.ts';

/** Plain crossings of two fine polylines, counted by exact signs: slow, but a different road to the same number. */
function countByChords(a: Path, b: Path): number {
  const p = pathFlatten(a, 1e-3);
  const q = pathFlatten(b, 1e-3);
  const apart = (s: number, t: number, u: number, v: number): boolean =>
    Math.max(s, t) < Math.min(u, v) || Math.max(u, v) < Math.min(s, t);
  let count = 0;
  for (let i = 1; i < p.length; i++) {
    const [a0, a1] = [p[i - 1]!, p[i]!] as [Point, Point];
    for (let k = 1; k < q.length; k++) {
      const [b0, b1] = [q[k - 1]!, q[k]!] as [Point, Point];
      if (apart(a0.x, a1.x, b0.x, b1.x) || apart(a0.y, a1.y, b0.y, b1.y)) continue;
      if (side(a0, a1, b0) * side(a0, a1, b1) < 0 && side(b0, b1, a0) * side(b0, b1, a1) < 0) count++;
    }
  }
  return count;
}

const one = fc.noBias(fc.array(anyPoint, { minLength: 4, maxLength: 4 }));
const even = fc.noBias(anyPath);
/** Even draws only: the special values fast-check likes (equal, zero, tiny) make curves that lie on one another, counted elsewhere. */
const EVEN = { seed: 4711, endOnFailure: true };

describe('crossings of two paths', () => {
  it('are as many as chords of the same curves count', () => {
    let crossings = 0;
    fc.assert(
      fc.property(one, one, (a, b) => {
        const found = pathIntersections(a, b).length;
        crossings += found;
        expect(found).toBe(countByChords(a, b));
      }),
      { ...EVEN, numRuns: 200 },
    );
    expect(crossings).toBeGreaterThan(100);
  });

  it('lie on both, whatever the curves', () => {
    fc.assert(
      fc.property(anyPath, anyPath, (a, b) => {
        for (const m of pathIntersections(a, b)) {
          expect(distance(placePoint(a, m.a), m.point)).toBeLessThan(2e-5);
          expect(distance(placePoint(b, m.b), m.point)).toBeLessThan(2e-5);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('do not depend on which path is asked, nor on the way it is walked', () => {
    fc.assert(
      fc.property(even, even, (a, b) => {
        const there = pathIntersections(a, b).length;
        expect(pathIntersections(b, a)).toHaveLength(there);
        expect(pathIntersections(pathReverse(a), b)).toHaveLength(there);
      }),
      { ...EVEN, numRuns: 200 },
    );
  });

  it('of a line drawn as a curve of uneven speed are those of the line', () => {
    const line: Path = [0, 1, 2, 10].map((x) => ({ x, y: 0 }));
    const across = linePath({ x: 4, y: -3 }, { x: 4, y: 3 });
    const found = pathIntersections(line, across);
    expect(found.map((m) => m.point)).toEqual([{ x: 4, y: 0 }]);
    expect(placePoint(line, found[0]!.a).x).toBeWithinMm(4, 1e-9);
    const along = linePath({ x: 8, y: 0 }, { x: 20, y: 0 });
    expect(pathIntersections(line, along).map((m) => m.point.x)).toEqual([8, 10]);
  });

  it('at a joint are told once', () => {
    const a = polylinePath([0, 10, 20].map((x) => ({ x, y: 0 })));
    const b = polylinePath([-10, 0, 10].map((y) => ({ x: 10, y })));
    expect(pathIntersections(a, b)).toHaveLength(1);
  });

  it('of ends that meet are told', () => {
    const a = linePath({ x: 0, y: 0 }, { x: 10, y: 0 });
    const b = throughPoints([
      { x: 10, y: 0 },
      { x: 12, y: 8 },
      { x: 30, y: 9 },
    ]);
    expect(pathIntersections(a, b).map((m) => m.point)).toEqual([{ x: 10, y: 0 }]);
  });

  it('of paths that run along one another are the ends of the shared run', () => {
    const a = linePath({ x: 0, y: 0 }, { x: 10, y: 0 });
    const b = linePath({ x: 20, y: 0 }, { x: 4, y: 0 });
    expect(pathIntersections(a, b).map((m) => m.point.x)).toEqual([4, 10]);
    const curve = throughPoints(
      [
        { x: 0, y: 0 },
        { x: 50, y: 30 },
      ],
      { startTangent: { x: 1, y: 0 } },
    );
    expect(pathIntersections(curve, pathReverse(curve)).map((m) => m.a.t)).toEqual([0, 1]);
  });

  it('that only touch are found too', () => {
    // Two parabola arcs, apex to apex at (0, 0): x² and −x², degree-raised.
    const up: Path = [
      { x: -30, y: 30 },
      { x: -10, y: -10 },
      { x: 10, y: -10 },
      { x: 30, y: 30 },
    ];
    const down = up.map((p) => ({ x: p.x, y: -p.y }));
    const found = pathIntersections(up, down);
    expect(found).toHaveLength(1);
    expect(distance(found[0]!.point, { x: 0, y: 0 })).toBeLessThan(1e-2);
  });
});

describe('crossings with a line', () => {
  it('reach beyond the two points and say how far', () => {
    const found = pathLineIntersections(
      linePath({ x: 0, y: -5 }, { x: 0, y: 5 }),
      { x: 10, y: 0 },
      { x: 20, y: 0 },
    );
    expect(found).toHaveLength(1);
    expect(found[0]!.along).toBeCloseTo(-1, 12);
    expect(found[0]!.place.t).toBeCloseTo(0.5, 12);
  });

  it('lie on the line and come in the order of the path', () => {
    fc.assert(
      fc.property(anyPath, anyPoint, anyPoint, (path, p, q) => {
        fc.pre(distance(p, q) > 1);
        const found = pathLineIntersections(path, p, q);
        let last = -1;
        for (const m of found) {
          const off = ((q.x - p.x) * (m.point.y - p.y) - (q.y - p.y) * (m.point.x - p.x)) / distance(p, q);
          expect(Math.abs(off)).toBeLessThan(1e-5);
          expect(m.place.cubic + m.place.t).toBeGreaterThan(last);
          last = m.place.cubic + m.place.t;
        }
        // Both ends on different sides: an odd number of crossings (touches apart).
        const s0 = side(p, q, path[0]!);
        const s1 = side(p, q, path[path.length - 1]!);
        if (s0 * s1 < 0) expect(found.length).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });
});
