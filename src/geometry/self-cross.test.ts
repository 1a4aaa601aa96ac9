import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyShape } from './any.test-case.ts';
import { linePath, selfIntersections } from './index.ts';
import type { Path, Point } from './index.ts';

const closed = (points: readonly Point[]): Path[] =>
  points.map((p, i) => linePath(p, points[(i + 1) % points.length]!));

describe('an outline that meets itself', () => {
  it('is not any star-shaped one', () => {
    fc.assert(
      fc.property(anyShape, (shape) => {
        expect(selfIntersections(closed(shape))).toEqual([]);
      }),
    );
  });

  it('is told where two of its edges cross', () => {
    const bow = closed([
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 0, y: 100 },
      { x: 100, y: 100 },
    ]);
    const found = selfIntersections(bow);
    expect(found.map((m) => [m.kind, m.a.path, m.b.path])).toEqual([['crosses', 1, 3]]);
    expect(found[0]!.point.x).toBeWithinMm(50, 1e-9);
  });

  it('is told where a single curve loops', () => {
    const loop: Path = [
      { x: 0, y: 0 },
      { x: 100, y: 100 },
      { x: -50, y: 100 },
      { x: 50, y: 0 },
    ];
    const found = selfIntersections([loop, linePath({ x: 50, y: 0 }, { x: 0, y: 0 })]);
    expect(found.map((m) => m.kind)).toEqual(['crosses']);
    expect(found[0]!.a.t).toBeLessThan(found[0]!.b.t);
  });

  it('only touches itself at a dart of no width', () => {
    const dart = closed([
      { x: 0, y: 0 },
      { x: 50, y: 0 },
      { x: 50, y: 40 },
      { x: 50, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 80 },
      { x: 0, y: 80 },
    ]);
    const found = selfIntersections(dart);
    expect(found.length).toBeGreaterThan(0);
    expect(found.every((m) => m.kind === 'touches')).toBe(true);
  });

  it('crosses itself when a dart leg pokes through an edge, even exactly at its point', () => {
    const poke = (y: number): string[] =>
      selfIntersections(
        closed([
          { x: 0, y: 0 },
          { x: 40, y: 0 },
          { x: 50, y },
          { x: 60, y: 0 },
          { x: 100, y: 0 },
          { x: 100, y: 80 },
          { x: 0, y: 80 },
        ]),
      ).map((m) => m.kind);
    expect(poke(79)).toEqual([]);
    expect(poke(80)).toEqual(['touches']);
    expect(poke(81)).toEqual(['crosses', 'crosses']);
  });
});
