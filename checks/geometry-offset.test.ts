/**
 * Offsets of convex outlines against the Steiner-Minkowski formula (J. Steiner 1840; Schneider, Convex Bodies, memory):
 * area(w) = A + L·w + π·w² for a smooth convex outline; for a polygon with mitred corners each corner of turn θ adds w²·tan(θ/2) instead (derived).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  linePath,
  offsetOutline,
  pathLength,
  pathsArea,
  ringArea,
  throughPoints,
} from '../src/geometry/index.ts';
import type { OffsetSide, Path, Point } from '../src/geometry/index.ts';

const mitre = { kind: 'mitre', limit: 1e3 } as const;
const withWidth = (paths: readonly Path[], width: number): OffsetSide[] =>
  paths.map((path) => ({ path, width, start: mitre, end: mitre }));

describe('the area inside an offset', () => {
  it('of a convex polygon with mitred corners', () => {
    const angles = fc
      .uniqueArray(fc.integer({ min: 0, max: 359 }), { minLength: 4, maxLength: 10 })
      .map((a) => a.sort((x, y) => x - y).map((d) => (d * Math.PI) / 180));
    fc.assert(
      fc.property(angles, fc.integer({ min: 1, max: 40 }), (at, width) => {
        // Corners on a circle of 250 mm are always convex; gaps over a half circle would make needles.
        fc.pre(at.every((a, i) => (at[(i + 1) % at.length]! - a + 2 * Math.PI) % (2 * Math.PI) < 2.5));
        fc.pre(at.every((a, i) => (at[(i + 1) % at.length]! - a + 2 * Math.PI) % (2 * Math.PI) > 0.15));
        const points = at.map((a) => ({ x: 250 * Math.cos(a), y: 250 * Math.sin(a) }));
        const paths = points.map((p, i) => linePath(p, points[(i + 1) % points.length]!));
        let expected = pathsArea(paths);
        for (const path of paths) expected += pathLength(path) * width;
        points.forEach((p, i) => {
          const before = points[(i + points.length - 1) % points.length]!;
          const after = points[(i + 1) % points.length]!;
          const turn = Math.atan2(after.y - p.y, after.x - p.x) - Math.atan2(p.y - before.y, p.x - before.x);
          expected += width * width * Math.tan((((turn + 4 * Math.PI) % (2 * Math.PI)) as number) / 2);
        });
        const got = ringArea(offsetOutline(withWidth(paths, width)).outline);
        expect(Math.abs(got - expected)).toBeLessThan(1e-3);
      }),
      { numRuns: 300 },
    );
  });

  it('of a smooth convex outline, at several widths', () => {
    const quarter = (from: number): Path => {
      const at = (t: number): Point => ({ x: 240 * Math.cos(t), y: 110 * Math.sin(t) });
      const along = (t: number): Point => ({ x: -240 * Math.sin(t), y: 110 * Math.cos(t) });
      const steps = Array.from({ length: 9 }, (_, i) => at(from + (i * Math.PI) / 16));
      return throughPoints(steps, { startTangent: along(from), endTangent: along(from + Math.PI / 2) });
    };
    const paths = [0, 1, 2, 3].map((k) => quarter((k * Math.PI) / 2));
    const [area, perimeter] = [pathsArea(paths), paths.reduce((sum, p) => sum + pathLength(p), 0)];
    for (const width of [5, 15, 40]) {
      const { outline, sides } = offsetOutline(withWidth(paths, width));
      const expected = area + perimeter * width + Math.PI * width * width;
      // CURVE_MM along the whole outline is the promise; the ring is flattened to a fifth of it.
      expect(Math.abs(pathsArea(sides) - expected) / perimeter).toBeLessThan(0.01);
      expect(Math.abs(ringArea(outline) - expected) / perimeter).toBeLessThan(0.02);
    }
  });
});
