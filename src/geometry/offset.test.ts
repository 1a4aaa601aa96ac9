import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyShape } from './any.test-case.ts';
import {
  distance,
  linePath,
  nearestPlace,
  offsetOutline,
  pathAt,
  pathEnd,
  pathParallel,
  pathPart,
  pathStart,
  polylinePath,
  reflectPoint,
  ringArea,
  selfIntersections,
  throughPoints,
} from './index.ts';
import type { CornerStyle, OffsetSide, Path, Point } from './index.ts';

const MITRE: CornerStyle = { kind: 'mitre' };

const sides = (
  points: readonly Point[],
  widths: readonly number[],
  style: CornerStyle = MITRE,
): OffsetSide[] =>
  points.map((p, i) => ({
    path: linePath(p, points[(i + 1) % points.length]!),
    width: widths[i % widths.length]!,
    start: style,
    end: style,
  }));

const box = [
  { x: 0, y: 0 },
  { x: 200, y: 0 },
  { x: 200, y: 300 },
  { x: 0, y: 300 },
];

describe('a parallel', () => {
  it('keeps its distance from the curve wherever the bend is wider than the width', () => {
    fc.assert(
      fc.property(anyShape, fc.integer({ min: 3, max: 30 }), (shape, width) => {
        const path = throughPoints(shape);
        const cut = pathParallel(path, width);
        for (let s = 0.05; s < 0.96; s += 0.05) {
          const off = nearestPlace(path, pathAt(cut, s)).distance;
          // Never further than the width; nearer only inside a loop, where the bend is tighter than the width.
          expect(off).toBeLessThan(width + 0.05);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('of a straight path is straight and exactly beside it', () => {
    const cut = pathParallel(linePath({ x: 0, y: 0 }, { x: 0, y: 50 }), 10);
    expect(pathStart(cut)).toEqual({ x: 10, y: 0 });
    expect(pathEnd(cut)).toEqual({ x: 10, y: 50 });
  });
});

describe('a cutting outline', () => {
  it('has each edge’s own width, the corners running on until they meet', () => {
    const out = offsetOutline(sides(box, [40, 15, 10, 0]));
    expect(out.corners).toEqual(['mitre', 'mitre', 'mitre', 'mitre']);
    expect(ringArea(out.outline)).toBeCloseTo((200 + 15) * (300 + 40 + 10), 6);
    const corners = [
      { x: 0, y: -40 },
      { x: 215, y: -40 },
      { x: 215, y: 310 },
      { x: 0, y: 310 },
    ];
    corners.forEach((p, i) => expect(distance(pathStart(out.sides[i]!), p)).toBeLessThan(1e-9));
    expect(out.looped).toBe(0);
  });

  it('is a closed chain that lies its width away from every edge, corners apart', () => {
    fc.assert(
      fc.property(anyShape, fc.integer({ min: 5, max: 25 }), (shape, width) => {
        const out = offsetOutline(sides(shape, [width]));
        out.sides.forEach((s, i) => {
          expect(distance(pathEnd(s), pathStart(out.sides[(i + 1) % out.sides.length]!))).toBeLessThan(1e-5);
        });
        const outline = polylinePath([...shape, shape[0]!]);
        for (const p of out.outline) expect(nearestPlace(outline, p).distance).toBeGreaterThan(width - 0.05);
        const middle = out.sides.map((s) => pathAt(s, 0.5));
        for (const p of middle) expect(nearestPlace(outline, p).distance).toBeLessThan(width + 0.05);
        expect(selfIntersections(out.sides)).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('mitres a corner inside of an edge as it does one between edges', () => {
    const whole = offsetOutline([
      { path: polylinePath([box[0]!, box[1]!, box[2]!]), width: 15, start: MITRE, end: MITRE },
      { path: polylinePath([box[2]!, box[3]!, box[0]!]), width: 15, start: MITRE, end: MITRE },
    ]);
    expect(ringArea(whole.outline)).toBeCloseTo(230 * 330, 6);
    expect(whole.sides).toHaveLength(2);
    expect(whole.corners).toEqual(['mitre', 'mitre']);
  });

  it('cuts a needle off at its limit', () => {
    const needle = [
      { x: 0, y: 0 },
      { x: 300, y: -6 },
      { x: 300, y: 6 },
    ];
    const out = offsetOutline(sides(needle, [10]));
    expect(out.corners[2]).toBe('cut');
    const tip = Math.max(...out.outline.map((p) => distance(p, { x: 0, y: 0 })).filter((d) => d < 100));
    expect(tip).toBeWithinMm(40, 1e-6);
    expect(offsetOutline(sides(needle, [10], { kind: 'mitre', limit: 100 })).corners[2]).toBe('mitre');
  });

  it('steps square across where the width changes along one line', () => {
    const out = offsetOutline(
      sides(
        [
          { x: 0, y: 0 },
          { x: 200, y: 0 },
          { x: 200, y: 150 },
          { x: 200, y: 300 },
          { x: 0, y: 300 },
        ],
        [15, 15, 25, 15, 15],
      ),
    );
    expect(out.corners[1]).toBe('step');
    expect(out.outline).toContainEqual({ x: 215, y: 150 });
    expect(out.outline).toContainEqual({ x: 225, y: 150 });
  });

  it('cuts off the loop where a hollow is tighter than the allowance', () => {
    // A notch-like hollow of 4 mm radius under an allowance of 10 mm.
    const hollow = throughPoints(
      [
        { x: 104, y: 0 },
        { x: 100, y: -4 },
        { x: 96, y: 0 },
      ],
      { startTangent: { x: 0, y: -1 }, endTangent: { x: 0, y: 1 } },
    );
    const walls: Path[] = [
      hollow,
      linePath({ x: 96, y: 0 }, { x: 96, y: 60 }),
      linePath({ x: 96, y: 60 }, { x: 0, y: 60 }),
      linePath({ x: 0, y: 60 }, { x: 0, y: -60 }),
      linePath({ x: 0, y: -60 }, { x: 200, y: -60 }),
      linePath({ x: 200, y: -60 }, { x: 200, y: 60 }),
      linePath({ x: 200, y: 60 }, { x: 104, y: 60 }),
      linePath({ x: 104, y: 60 }, { x: 104, y: 0 }),
    ];
    const chain = [...walls.slice(1), walls[0]!].map((path) => ({
      path,
      width: 10,
      start: MITRE,
      end: MITRE,
    }));
    const out = offsetOutline(chain);
    expect(out.looped).toBeGreaterThan(0);
    // The slit (8 mm) closes altogether: the outline is the box with its allowance.
    expect(ringArea(out.outline)).toBeGreaterThan(219 * 139);
  });
});

describe('the shaped end of an allowance', () => {
  // A hem that meets a slanting side seam: the garment flares downwards.
  const skirt = [
    { x: 0, y: 0 },
    { x: 260, y: 0 },
    { x: 200, y: 400 },
    { x: 0, y: 400 },
  ];
  const withHem = (style: CornerStyle): ReturnType<typeof offsetOutline> =>
    offsetOutline(sides(skirt, [40, 15, 15, 0]).map((s, i) => (i === 0 ? { ...s, end: style } : s)));

  it('mirrored: a hem turned up ends along the side’s cutting line', () => {
    const out = withHem({ kind: 'mirrored' });
    expect(out.corners[0]).toBe('mirrored');
    const end = pathPart(out.sides[0]!, 0.9, 1);
    const at = { x: 0, y: 0 };
    let checked = 0;
    for (const p of [pathEnd(end), out.sides[0]![out.sides[0]!.length - 4]!]) {
      const turnedUp = reflectPoint(p, at, { x: 1, y: 0 });
      // The side seam's cutting line, 15 mm outside of the line from (260, 0) to (200, 400).
      const direction = { x: -60, y: 400 };
      const off = ((turnedUp.x - 260) * direction.y - turnedUp.y * direction.x) / Math.hypot(60, 400);
      expect(off).toBeWithinMm(15, 1e-6);
      checked++;
    }
    expect(checked).toBe(2);
  });

  it('square: it ends at a right angle to its own stitching line', () => {
    const out = withHem({ kind: 'square' });
    expect(out.corners[0]).toBe('square');
    const side = out.sides[0]!;
    const last = [side[side.length - 4]!, pathEnd(side)];
    expect(last[0]!.x).toBeWithinMm(last[1]!.x, 1e-9);
    expect(last[0]!.y).toBeWithinMm(-40, 1e-9);
  });

  it('of two shaped ends the wider allowance decides', () => {
    const both = sides(skirt, [40, 15, 15, 0], { kind: 'mirrored' });
    const out = offsetOutline(both);
    expect(out.corners[0]).toBe('mirrored');
    const hemOnly = withHem({ kind: 'mirrored' }).sides[0]!;
    out.sides[0]!.slice(-4).forEach((p, i) => expect(distance(p, hemOnly.slice(-4)[i]!)).toBeLessThan(1e-9));
  });

  it('square on both sides of a seam gives two ends of one length', () => {
    // Two panels that meet in a slanting seam with the same armhole line above: sewn together their allowances end as one.
    const left = offsetOutline(
      sides(
        [
          { x: 0, y: 0 },
          { x: 100, y: 0 },
          { x: 120, y: 300 },
          { x: 0, y: 320 },
        ],
        [15],
      ).map((s, i) => (i === 1 ? { ...s, end: { kind: 'square' } } : s)),
    );
    const side = left.sides[1]!;
    const last = distance(side[side.length - 4]!, pathEnd(side));
    expect(last).toBeWithinMm(15, 1e-6);
  });
});
