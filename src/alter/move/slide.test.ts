import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  distance,
  pathAt,
  pathEnd,
  pathLength,
  pathLineIntersections,
  pathStart,
  ringArea,
} from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { apart } from './apart.test-case.ts';
import { hingePart, openingAngle, openingAt } from './hinge.ts';
import { Refusal } from '../words/refusal.ts';
import { BODICE, PANELS, SKIRT } from '../drawn/schematic.ts';
import { slidePart } from './slide.ts';
import type { Slide } from './slide.ts';

// Laws named in the brief of the alterations and in docs/trade.md 5.16 (derived). The pieces are the plain garments of schematic.ts.

const pieces = [...BODICE.pieces.slice(0, 3), ...PANELS.pieces, ...SKIRT.pieces.slice(0, 2)];
const onPiece = fc.constantFrom(...pieces);

const box = (piece: DrawnPiece): { x0: number; x1: number; y0: number; y1: number } => {
  const points = piece.edges.map((e) => pathStart(e.path));
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
};

/**
 * A cut across the piece from outline to outline, level or upright or aslant: even, hinged at one end, or with two amounts of one sign.
 * (A wedge whose hinge lies outside of the seam but within a thumb's width of it is drawn by another rule and is undone to second order only.)
 */
const slides = onPiece.chain((piece) =>
  fc
    .record({
      u: fc.double({ min: 0.2, max: 0.8, noNaN: true }),
      v: fc.double({ min: 0.2, max: 0.8, noNaN: true }),
      upright: fc.boolean(),
      amount: fc.double({ min: -15, max: 30, noNaN: true }),
      kind: fc.constantFrom([1, 1], [0, 1], [1, 0], [1, 0.7], [0.6, 1]),
    })
    .map(({ u, v, upright, amount, kind }) => {
      const { x0, x1, y0, y1 } = box(piece);
      const a = upright ? { x: x0 + u * (x1 - x0), y: y0 } : { x: x0, y: y0 + u * (y1 - y0) };
      const b = upright ? { x: x0 + v * (x1 - x0), y: y1 } : { x: x1, y: y0 + v * (y1 - y0) };
      const hits = piece.edges
        .flatMap((e) => pathLineIntersections(e.path, a, b))
        .toSorted((p, q) => p.along - q.along);
      const slide: Slide = {
        from: hits[0]!.point,
        to: hits[hits.length - 1]!.point,
        atFrom: amount * kind[0]!,
        atTo: amount * kind[1]!,
      };
      return { piece, slide };
    }),
);

const attempt = <T>(f: () => T): T | undefined => {
  try {
    return f();
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
};

const heightOver = ({ from, to }: Slide, p: Point): number =>
  ((to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x)) / distance(from, to);

describe('slide', () => {
  it('lengthens by the whole amount what crosses the line, and nothing else', () => {
    const front = BODICE.pieces[0]!;
    const long = slidePart(front, { from: { x: 240, y: 50 }, to: { x: 0, y: 50 }, atFrom: 25, atTo: 25 });
    const size = (id: string, p: DrawnPiece) => pathLength(p.edges.find((e) => e.id === id)!.path);
    // By hand: the centre is upright, so it grows by 25; the side leans 4 in 100: from √(4² + 100²) to √(4² + 125²).
    expect(size('centre', long)).toBeWithinMm(330 + 25, 1e-6);
    expect(size('side-low', long)).toBeWithinMm(Math.hypot(4, 125), 1e-6);
    for (const id of ['shoulder', 'armhole', 'neck', 'waist-centre', 'side-up', 'side-dart-a']) {
      expect(size(id, long), id).toBeWithinMm(size(id, front), 1e-9);
    }
  });

  it('opens and closes again: every place back to 0.02 mm', () => {
    let done = 0;
    fc.assert(
      fc.property(slides, ({ piece, slide }) => {
        const open = attempt(() => slidePart(piece, slide));
        if (!open) return;
        const back = attempt(() => slidePart(open, { ...slide, atFrom: -slide.atFrom, atTo: -slide.atTo }));
        if (!back) return;
        done++;
        expect(apart(back, piece)).toBeLessThan(0.02);
      }),
      { numRuns: 400, seed: 1 },
    );
    expect(done).toBeGreaterThan(200);
  });

  it('keeps lengths, distances and areas on both rigid parts', () => {
    fc.assert(
      fc.property(slides, ({ piece, slide }) => {
        const after = attempt(() => slidePart(piece, slide));
        if (!after) return;
        for (const sign of [1, -1]) {
          const clear = (p: Point): boolean => sign * heightOver(slide, p) > 0;
          const own = piece.edges
            .map((e, i) => ({ old: e, now: after.edges[i]! }))
            .filter(({ old }) => old.path.every(clear));
          for (const { old, now } of own) {
            expect(pathLength(now.path)).toBeWithinMm(pathLength(old.path), 1e-6);
          }
          // Six and more distances between places of the part (trade.md 5.16, 3), and the area of its corners' polygon.
          const old = own.flatMap(({ old: o }) => [pathStart(o.path), pathAt(o.path, 0.4)]);
          const now = own.flatMap(({ now: n }) => [pathStart(n.path), pathAt(n.path, 0.4)]);
          for (let i = 0; i < old.length; i++) {
            for (let k = i + 1; k < old.length; k++) {
              expect(distance(now[i]!, now[k]!)).toBeWithinMm(distance(old[i]!, old[k]!), 1e-6);
            }
          }
          expect(Math.abs(ringArea(now) - ringArea(old))).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 200, seed: 2 },
    );
  });

  it('adds exactly its width to every level that crosses both parts (5.16, 2)', () => {
    const skirt = SKIRT.pieces[0]!;
    const wide = slidePart(skirt, { from: { x: 150, y: 10 }, to: { x: 150, y: -610 }, atFrom: 20, atTo: 20 });
    for (const y of [-550, -400, -250, -150]) {
      const right = (p: DrawnPiece) => {
        const side = p.edges.find((e) => e.id === 'side')!;
        const t = (y - pathStart(side.path).y) / (pathEnd(side.path).y - pathStart(side.path).y);
        return pathAt(side.path, t).x;
      };
      expect(right(wide) - right(skirt)).toBeWithinMm(20, 1e-6);
    }
  });

  it('hinges on an edge whose end takes nothing, and keeps that edge', () => {
    const back = BODICE.pieces[1]!;
    const side = back.edges.find((e) => e.id === 'side')!;
    const hinge = pathAt(side.path, 0.4);
    const folded = slidePart(back, { from: hinge, to: { x: 0, y: hinge.y }, atFrom: 0, atTo: -12 });
    const now = folded.edges.find((e) => e.id === 'side')!;
    expect(pathLength(now.path)).toBeWithinMm(pathLength(side.path), 1e-6);
  });

  it('refuses to fold away a corner', () => {
    const front = BODICE.pieces[0]!;
    expect(() =>
      slidePart(front, { from: { x: 240, y: 10 }, to: { x: 0, y: 10 }, atFrom: -20, atTo: -20 }),
    ).toThrow(/swallow the corner/);
  });
});

describe('hinge', () => {
  it('measures its opening straight across the mouth', () => {
    // Chord of a circle: 2 r sin(a/2). 1/4 in at 9 in is 1.59 degrees (docs/trade.md 5.14, derived).
    expect((openingAngle(0.25, 9) * 180) / Math.PI).toBeCloseTo(1.59, 2);
    expect(openingAt(openingAngle(13, 240), 240)).toBeCloseTo(13, 9);
  });

  it('closes what it opened to 0.02 mm, whatever the slash', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(BODICE.pieces[0]!, BODICE.pieces[1]!),
        fc.double({ min: 0.15, max: 0.85, noNaN: true }),
        fc.double({ min: 0.01, max: 0.1, noNaN: true }),
        fc.boolean(),
        (piece, share, angle, before) => {
          const neck = piece.edges.find((e) => e.id === 'neck')!;
          const side = piece.edges.find((e) => e.id === 'armhole')!;
          const slash = { hinge: pathAt(side.path, 0.4), mouth: pathAt(neck.path, share), angle, before };
          const open = hingePart(piece, slash);
          expect(apart(hingePart(open, { ...slash, angle: -angle }), piece)).toBeLessThan(0.02);
          // The hinge lies on the armhole: that seam keeps its length (5.16, 3).
          const now = open.edges.find((e) => e.id === 'armhole')!;
          expect(pathLength(now.path)).toBeWithinMm(pathLength(side.path), 1e-6);
        },
      ),
      { numRuns: 200, seed: 3 },
    );
  });
});
