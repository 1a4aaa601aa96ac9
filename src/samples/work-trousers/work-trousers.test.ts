import { describe, expect, it } from 'vitest';
import { distance, pathEnd, pathStart } from '../../geometry/index.ts';
import { sample } from '../catalogue.ts';
import { between, cornerAngle, edgeLength, edgePath, ends } from '../tape.test-case.ts';

// Ranges are trade habit (common practice) as gathered in the drafting guide, unless another source is named.
const trousers = sample('work-trousers');
const each = (check: (s: number, label: string) => void): void =>
  trousers.chart.sizes.forEach(({ id }, s) => check(s, `size ${id}`));
const body = (measure: keyof typeof trousers.chart.body, s: number): number =>
  trousers.chart.body[measure]![s]!;
/** How far a fork reaches past the upright through the centre at the hip, as drawn: from the end of the fly or seat line. */
const fork = (half: 'front' | 'back', s: number): number => {
  const { start, end } = ends(trousers, half, 'crotch', s);
  return start.x - end.x;
};

describe('the trousers', () => {
  it('sit ½ to 1 in below the body’s crotch depth (New Mexico C-209, docs/trade.md 3.2)', () => {
    each((s, label) => {
      const level = -ends(trousers, 'front', 'inseam', s).start.y;
      between(level - body('crotch-depth', s), 12.6, 25.5, label);
    });
  });

  it('fork about hip/16 in front and hip/8 behind, the larger sizes a little more', () => {
    each((s, label) => {
      const hip = body('hip-girth', s);
      between(fork('front', s), hip / 16 - 8, hip / 16 + 10, label);
      between(fork('back', s), hip / 8 - 20, hip / 8 + 10, label);
    });
  });

  it('raise the centre back 25 to 41 and slant it, and lower the centre front by up to 15', () => {
    each((s, label) => {
      const seat = edgePath(trousers, 'back', 'seat', s);
      between(pathStart(seat).y, 25, 41, label);
      const slant =
        (Math.atan2(pathStart(seat).x - pathEnd(seat).x, pathStart(seat).y - pathEnd(seat).y) * 180) /
        Math.PI;
      between(slant, 4, 12, label);
      between(-pathStart(edgePath(trousers, 'front', 'fly', s)).y, 0, 15, label);
    });
  });

  it('join smoothly through the fork: the angles at the inside leg make 180°', () => {
    each((s, label) => {
      expect(
        cornerAngle(trousers, 'front', 'crotch', s) + cornerAngle(trousers, 'back', 'crotch', s),
        label,
      ).toBeCloseTo(180, 1);
    });
  });

  it('run on from fly to crotch and from seat to crotch without a corner', () => {
    each((s, label) => {
      expect(cornerAngle(trousers, 'front', 'fly', s), label).toBeCloseTo(180, 1);
      expect(cornerAngle(trousers, 'back', 'seat', s), label).toBeCloseTo(180, 1);
    });
  });

  it('balance knee and hem on the crease, back wider than front', () => {
    each((s, label) => {
      for (const half of ['front', 'back'] as const) {
        const { start, end } = ends(trousers, half, 'hem', s);
        expect(start.x + end.x, `${label} ${half}`).toBeCloseTo(0, 1);
      }
      const width = (half: string) =>
        ends(trousers, half, 'hem', s).end.x - ends(trousers, half, 'hem', s).start.x;
      between(width('back') - width('front'), 10, 30, label);
    });
  });

  it('have equal side seams, and an inside leg up to 6 shorter behind, stretched on', () => {
    each((s, label) => {
      expect(edgeLength(trousers, 'front', 'side', s), label).toBeCloseTo(
        edgeLength(trousers, 'back', 'side', s),
        2,
      );
      between(
        edgeLength(trousers, 'front', 'inseam', s) - edgeLength(trousers, 'back', 'inseam', s),
        0,
        6,
        label,
      );
    });
  });

  it('have ease: 2 in at hip, ½ to 1 in at the band, 1½ in or more at thigh, and a knee to bend in', () => {
    each((s, label) => {
      between(trousers.chart.finished['hip']![s]! - body('hip-girth', s), 50, 82, label);
      between(edgeLength(trousers, 'waistband', 'waist', s) - body('waist-girth', s), 12, 26, label);
      expect(trousers.chart.finished['thigh']![s]! - body('thigh-girth', s), label).toBeGreaterThan(25);
      between(trousers.chart.finished['knee']![s]! - body('knee-girth', s), 60, 110, label);
    });
  });

  it('have darts with equal legs, 10 to 30 wide', () => {
    each((s, label) => {
      for (const [id, dart] of [
        ['front', 'dart'],
        ['back', 'dart-side'],
        ['back', 'dart-centre'],
      ] as const) {
        const first = edgePath(trousers, id, `${dart}-first`, s);
        const second = edgePath(trousers, id, `${dart}-second`, s);
        between(distance(pathStart(first), pathEnd(second)), 10, 30, `${label} ${id} ${dart}`);
        expect(edgeLength(trousers, id, `${dart}-first`, s)).toBeCloseTo(
          edgeLength(trousers, id, `${dart}-second`, s),
          2,
        );
      }
    });
  });
});
