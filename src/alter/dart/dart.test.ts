import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, pathLength, pathsArea } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { apartOf } from '../move/apart.test-case.ts';
import { dartIntake, dartOf, fillDart, makeDart, rotateDart, trueDart } from './dart.ts';
import { pullEdges } from '../move/pull.ts';
import { BODICE, SKIRT } from '../drawn/schematic.ts';

// A dart rotation keeps every other seam length and the shape away from the dart (brief of the alterations; docs/trade.md 5.16, 6: derived).

describe('dart', () => {
  const front = BODICE.pieces[0]!;
  const shape = (p: DrawnPiece, id: string) => pathLength(p.edges.find((e) => e.id === id)!.path);

  it('rotates: every other seam keeps its length, the angle moves over', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('shoulder', 'armhole', 'neck', 'waist-centre', 'side-up'),
        fc.constantFrom('waist-dart', 'side-dart'),
        fc.double({ min: 0.15, max: 0.85, noNaN: true }),
        (edge, dart, at) => {
          const angle = dartOf(front, dart).angle;
          const done = rotateDart(front, dart, { edge, at }, 1, { id: 'moved', say: 'dart' });
          expect(dartOf(done.piece, 'moved').angle).toBeCloseTo(angle, 9);
          for (const e of front.edges) {
            if (e.kind === 'dart' || e.id === edge) continue;
            expect(shape(done.piece, e.id), e.id).toBeWithinMm(shape(front, e.id), 1e-6);
          }
          expect(shape(done.piece, edge) + shape(done.piece, done.second)).toBeWithinMm(
            shape(front, edge),
            1e-6,
          );
          // The cloth is the same: its area does not change.
          const area = (p: DrawnPiece) => pathsArea(p.edges.map((e) => e.path));
          expect(Math.abs(area(done.piece) - area(front))).toBeLessThan(0.5);
          // Legs alike; the centre stayed.
          const d = dartOf(done.piece, 'moved');
          expect(distance(d.a, d.point)).toBeWithinMm(distance(d.b, d.point), 1e-6);
          expect(apartOf(done.piece, front, 'centre')).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 150, seed: 6 },
    );
  });

  it('rotates away and back: the original outline to 0.02 mm', () => {
    const there = rotateDart(front, 'side-dart', { edge: 'shoulder', at: 0.5 }, 1, {
      id: 'moved',
      say: 'dart',
    });
    // Its old mouth is the corner between side-low and side-up; a hair beside it is as near as an edge can be cut.
    const home = rotateDart(there.piece, 'moved', { edge: 'side-up', at: 0.011 }, 1, {
      id: 'home',
      say: 'dart',
    });
    const a = dartOf(front, 'side-dart');
    const b = dartOf(home.piece, 'home');
    expect(b.angle).toBeCloseTo(a.angle, 9);
    expect(apartOf(home.piece, front, 'armhole')).toBeLessThan(0.02);
  });

  it('splits by share', () => {
    const whole = dartOf(front, 'side-dart').angle;
    const half = rotateDart(front, 'side-dart', { edge: 'shoulder', at: 0.5 }, 0.5, {
      id: 'moved',
      say: 'dart',
    });
    expect(dartOf(half.piece, 'moved').angle).toBeCloseTo(whole / 2, 9);
    expect(dartOf(half.piece, 'side-dart').angle).toBeCloseTo(whole / 2, 9);
  });

  it('is made with the asked intake and equal legs, and filled again leaves the edge as it was', () => {
    const skirt = SKIRT.pieces[0]!;
    const made = makeDart(skirt, 'waist-side', 0.5, { x: 150, y: -90 }, 16, {
      id: 'second',
      say: 'dart',
      serves: 'high-hip',
    });
    const d = dartOf(made.piece, 'second');
    // Truing its legs (by 0.3 mm each here) takes a tenth of a millimetre of it.
    expect(dartIntake(d)).toBeWithinMm(16, 0.15);
    expect(distance(d.a, d.point)).toBeWithinMm(distance(d.b, d.point), 1e-6);
    const filled = fillDart(made.piece, 'second');
    const sum = shape(filled, 'waist-side') + shape(filled, made.second);
    // The mouths lie 0.3 mm off the old line after truing: twice √(8² + 0.7²) for 16.
    expect(sum).toBeWithinMm(shape(skirt, 'waist-side'), 0.2);
  });

  it('has its legs trued without a change of their sum', () => {
    const uneven = pullEdges(front, [{ edge: 'side-dart-a', at: 0, by: { x: 6, y: 0 } }]);
    const d = dartOf(trueDart(uneven, 'side-dart'), 'side-dart');
    expect(distance(d.a, d.point)).toBeWithinMm(distance(d.b, d.point), 1e-6);
  });

  it('refuses a place without room, and a dart that is not there', () => {
    expect(() => rotateDart(front, 'nope', { edge: 'neck', at: 0.5 }, 1, { id: 'x', say: 'x' })).toThrow(
      /no dart/,
    );
    expect(() =>
      rotateDart(front, 'side-dart', { edge: 'neck', at: 0.001 }, 1, { id: 'x', say: 'x' }),
    ).toThrow(/no room/);
  });
});
