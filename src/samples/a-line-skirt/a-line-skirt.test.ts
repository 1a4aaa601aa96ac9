import { describe, expect, it } from 'vitest';
import { distance, pathEnd, pathStart } from '../../geometry/index.ts';
import { sample } from '../catalogue.ts';
import { between, cornerAngle, edgeLength, edgePath, ends, piece } from '../tape.test-case.ts';

// Ranges are trade habit (common practice) as gathered in the drafting guide, unless another source is named.
const skirt = sample('a-line-skirt');
const each = (check: (s: number, label: string) => void): void =>
  skirt.chart.sizes.forEach(({ id }, s) => check(s, `size ${id}`));
const body = (measure: keyof typeof skirt.chart.body, s: number): number => skirt.chart.body[measure]![s]!;
const DARTS = [
  ['front', 'dart'],
  ['back', 'dart-side'],
  ['back', 'dart-centre'],
] as const;

describe('the skirt', () => {
  it('has 2 to 2¾ in of ease at the hip and ½ to ¾ in at the band (docs/trade.md 3.2)', () => {
    each((s, label) => {
      between(skirt.chart.finished['hip']![s]! - body('hip-girth', s), 50, 70, label);
      between(edgeLength(skirt, 'waistband', 'waist', s) - body('waist-girth', s), 12, 19, label);
    });
  });

  it('has darts 12 to 30 wide whose legs are equal, the front 80 to 100 long, the back 110 to 150', () => {
    each((s, label) => {
      for (const [id, dart] of DARTS) {
        const first = edgePath(skirt, id, `${dart}-first`, s);
        const second = edgePath(skirt, id, `${dart}-second`, s);
        expect(edgeLength(skirt, id, `${dart}-first`, s), label).toBeCloseTo(
          edgeLength(skirt, id, `${dart}-second`, s),
          2,
        );
        between(distance(pathStart(first), pathEnd(second)), 12, 30, `${label} ${dart}`);
        between(
          edgeLength(skirt, id, `${dart}-first`, s),
          id === 'front' ? 80 : 110,
          id === 'front' ? 100 : 150,
          `${label} ${dart}`,
        );
      }
    });
  });

  it('keeps the waist smooth when its darts are sewn: the two angles at every mouth make 180°', () => {
    each((s, label) => {
      for (const [id, dart] of DARTS) {
        const edges = piece(skirt, id).edges.map((e) => e.id);
        const before = edges[edges.indexOf(`${dart}-first`) - 1]!;
        expect(
          cornerAngle(skirt, id, before, s) + cornerAngle(skirt, id, `${dart}-second`, s),
          `${label} ${dart}`,
        ).toBeCloseTo(180, 1);
      }
    });
  });

  it('raises the waist 8 to 15 at the side, square to the side seam and to both centres', () => {
    each((s, label) => {
      for (const half of ['front', 'back'] as const) {
        between(ends(skirt, half, 'side', s).end.y, 8, 15, label);
        expect(cornerAngle(skirt, half, 'side', s), label).toBeCloseTo(90, 1);
        expect(cornerAngle(skirt, half, 'waist-centre', s), label).toBeCloseTo(90, 1);
      }
    });
  });

  it('swings out 30 to 60 at the hem, which is raised to meet equal side seams square', () => {
    each((s, label) => {
      for (const half of ['front', 'back'] as const) {
        const { start, end } = ends(skirt, half, 'hem', s);
        between(end.x - skirt.chart.finished['hip']![s]! / 4, 30, 60, label);
        between(end.y - start.y, 3, 20, label);
        expect(cornerAngle(skirt, half, 'hem', s), label).toBeCloseTo(90, 1);
      }
      expect(edgeLength(skirt, 'front', 'side', s), label).toBeCloseTo(
        edgeLength(skirt, 'back', 'side', s),
        2,
      );
    });
  });

  it('keeps its patch pocket clear of dart, side seam and centre', () => {
    each((s, label) => {
      const pocket = piece(skirt, 'pocket').edges.flatMap((e) => e.path[s]!);
      expect(Math.min(...pocket.map((p) => p.x)), label).toBeGreaterThan(40);
      // the side seam is furthest in at the pocket's upper corner
      const side = edgePath(skirt, 'front', 'side', s);
      expect(Math.max(...pocket.map((p) => p.x)), label).toBeLessThan(pathEnd(side).x + 10);
      const point = piece(skirt, 'front').marks.find((m) => m.id === 'dart-point')!.at[s]!;
      expect(Math.max(...pocket.map((p) => p.y)), label).toBeLessThan(point.y - 5);
    });
  });
});
