/**
 * Crossings of cubics against a general-purpose Bézier library. Source: bezier-js 6.1.4 (npm, seen).
 */
import { Bezier } from 'bezier-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, pathIntersections, pathLineIntersections } from '../src/geometry/index.ts';
import type { Path, Point } from '../src/geometry/index.ts';

const coordinate = fc.integer({ min: -40_000, max: 40_000 }).map((v) => v / 100);
const point = fc.record({ x: coordinate, y: coordinate });
const cubic = fc.noBias(fc.tuple(point, point, point, point)).map((c): Path => c);
const library = (path: Path): Bezier => new Bezier(path.map(({ x, y }) => ({ x, y })));

describe('crossings', () => {
  it('of two cubics: every one of the library’s is one of ours, and it knows nearly all of ours', () => {
    let count = 0;
    let unknown = 0;
    fc.assert(
      fc.property(cubic, cubic, (a, b) => {
        const theirs = library(a)
          .intersects(library(b), 0.01)
          .map(String)
          .map((pair) => {
            const t = Number(pair.split('/')[0]);
            return library(a).get(t) as Point;
          });
        const ours = pathIntersections(a, b);
        count += ours.length;
        // The library answers with the middle of a box of its threshold, several times over; flat crossings smear most.
        for (const p of theirs) expect(Math.min(...ours.map((m) => distance(m.point, p)))).toBeLessThan(1);
        unknown += ours.filter((m) => theirs.every((p) => distance(m.point, p) > 1)).length;
      }),
      { numRuns: 300, seed: 20261125, endOnFailure: true },
    );
    expect(count).toBeGreaterThan(150);
    // It overlooks a few (its parts are fitted arcs); chord counting in src/geometry/cross.test.ts finds exactly as many as we do.
    expect(unknown / count).toBeLessThan(0.05);
  });

  it('of a cubic and a line, to a thousandth', () => {
    let count = 0;
    fc.assert(
      fc.property(cubic, point, point, (a, p, q) => {
        fc.pre(distance(p, q) > 10);
        const line = { p1: { x: p.x, y: p.y }, p2: { x: q.x, y: q.y } };
        const theirs = library(a)
          .lineIntersects(line)
          .map((t) => library(a).get(t) as Point);
        const ours = pathLineIntersections(a, p, q).filter((m) => m.along >= 0 && m.along <= 1);
        expect(ours).toHaveLength(theirs.length);
        count += ours.length;
        for (const m of ours) expect(Math.min(...theirs.map((t) => distance(t, m.point)))).toBeLessThan(1e-3);
      }),
      { numRuns: 500, seed: 20261125, endOnFailure: true },
    );
    expect(count).toBeGreaterThan(150);
  });
});
