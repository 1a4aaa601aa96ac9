import { chainLength, garmentAtSize } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { sample } from '../catalogue.ts';
import { between, cornerAngle, edgeLength, ends } from '../tape.test-case.ts';

// Ranges are trade habit (common practice) as gathered in the drafting guide, unless another source is named.
const smock = sample('chorus-smock');
const each = (check: (s: number, label: string) => void): void =>
  smock.chart.sizes.forEach(({ id }, s) => check(s, `height ${id}`));
const body = (measure: keyof typeof smock.chart.body, s: number): number => smock.chart.body[measure]![s]!;

describe('the smock', () => {
  it('is gathered to its yokes 1 : 1.6 to 2', () => {
    each((s, label) => {
      for (const half of ['front', 'back']) {
        between(
          edgeLength(smock, half, 'yoke', s) / edgeLength(smock, `${half}-yoke`, 'yoke', s),
          1.6,
          2,
          label,
        );
      }
    });
  });

  it('shares its armhole between yoke and body, upright and smooth at the yoke seam, level under the arm', () => {
    each((s, label) => {
      for (const half of ['front', 'back']) {
        const joint = cornerAngle(smock, half, 'armhole', s) + cornerAngle(smock, `${half}-yoke`, 'yoke', s);
        expect(joint, label).toBeCloseTo(180, 1);
        expect(cornerAngle(smock, half, 'side', s), label).toBeCloseTo(90, 1);
      }
      const seam = smock.seams.find((m) => m.id === 'armhole')!;
      const drawn = garmentAtSize(smock, s);
      between(chainLength(drawn, seam.a) - chainLength(drawn, seam.b), 0, 10, label);
    });
  });

  it('passes the head: neckline and the opening behind, doubled, are longer than the head’s girth', () => {
    each((s, label) => {
      const neck =
        2 * (edgeLength(smock, 'front-yoke', 'neck', s) + edgeLength(smock, 'back-yoke', 'neck', s));
      expect(neck + 2 * edgeLength(smock, 'back-yoke', 'centre-back', s), label).toBeGreaterThan(
        body('head-girth', s) + 20,
      );
      between(neck - body('neck-base-girth', s), 20, 70, label);
    });
  });

  it('grows in length with the child: hem between seat and knee, hem square to equal sides', () => {
    each((s, label) => {
      const nape = ends(smock, 'back-yoke', 'neck', s).end.y;
      const hem = ends(smock, 'back', 'hem', s).start.y;
      between((nape - hem) / body('stature', s), 0.42, 0.5, label);
      for (const half of ['front', 'back'])
        expect(cornerAngle(smock, half, 'hem', s), label).toBeCloseTo(90, 1);
      expect(edgeLength(smock, 'front', 'side', s), label).toBeCloseTo(
        edgeLength(smock, 'back', 'side', s),
        2,
      );
    });
  });
});
