import { describe, expect, it } from 'vitest';
import { sample } from '../catalogue.ts';
import { between, cornerAngle, edgeLength, ends } from '../tape.test-case.ts';

// Ranges are trade habit (common practice) as gathered in the drafting guide, unless another source is named.
const tee = sample('knit-tee');
const each = (check: (s: number, label: string) => void): void =>
  tee.chart.sizes.forEach(({ id }, s) => check(s, `size ${id}`));
const body = (measure: keyof typeof tee.chart.body, s: number): number => tee.chart.body[measure]![s]!;
const LEVELS = [
  ['bust', 'bust-girth'],
  ['waist', 'waist-girth'],
  ['high-hip', 'high-hip-girth'],
  ['hip', 'hip-girth'],
] as const;

describe('the tee', () => {
  it('is smaller than the body, by at most 8 %, and within half of the stretch it asks for (docs/trade.md 3.5)', () => {
    const stretch = tee.cloth.kind === 'knit' ? tee.cloth.stretch : 0;
    each((s, label) => {
      for (const [level, measure] of LEVELS) {
        const finished = tee.chart.finished[level]![s]!;
        between(finished / body(measure, s), 0.92, 0.995, `${label} ${level}`);
        expect(finished, label).toBeGreaterThanOrEqual(body(measure, s) / (1 + 0.5 * stretch));
      }
    });
  });

  it('has a neckband 80 to 90 % of the neckline, which passes the head at the cloth’s stretch (ANSUR I: head 546 on average)', () => {
    each((s, label) => {
      const band = edgeLength(tee, 'neckband', 'neck', s);
      const line = 2 * (edgeLength(tee, 'front', 'neck', s) + edgeLength(tee, 'back', 'neck', s));
      between(band / line, 0.8, 0.9, label);
      expect(line * 1.25, label).toBeGreaterThan(520);
    });
  });

  it('sets the sleeve in without ease, on a cap 0.18 to 0.32 of the armhole high', () => {
    each((s, label) => {
      const hole = edgeLength(tee, 'front', 'armhole', s) + edgeLength(tee, 'back', 'armhole', s);
      const cap = edgeLength(tee, 'sleeve', 'cap-front', s) + edgeLength(tee, 'sleeve', 'cap-back', s);
      between(cap - hole, -3, 3, label);
      between(ends(tee, 'sleeve', 'cap-back', s).end.y / hole, 0.18, 0.32, label);
    });
  });

  it('has front and back nearly alike, but for the deeper front neck', () => {
    each((s, label) => {
      expect(edgeLength(tee, 'front', 'shoulder', s), label).toBeCloseTo(
        edgeLength(tee, 'back', 'shoulder', s),
        2,
      );
      between(
        Math.abs(edgeLength(tee, 'front', 'armhole', s) - edgeLength(tee, 'back', 'armhole', s)),
        0,
        12,
        label,
      );
      const depth = (half: string) => ends(tee, half, 'neck', s).start.y - ends(tee, half, 'neck', s).end.y;
      between(depth('front') - depth('back'), 50, 90, label);
    });
  });

  it('is square at centres, shoulders, underarms and hems', () => {
    each((s, label) => {
      for (const half of ['front', 'back']) {
        for (const edge of ['neck', 'armhole', 'shoulder', 'hem', 'side']) {
          expect(cornerAngle(tee, half, edge, s), `${label} ${half} ${edge}`).toBeCloseTo(90, 0);
        }
      }
    });
  });
});
