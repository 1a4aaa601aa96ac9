import { describe, expect, it } from 'vitest';
import { WOMEN } from './women-table.ts';

describe('the women’s table', () => {
  it('grows from size to size in every girth', () => {
    for (const girth of [
      'upperBust',
      'underBust',
      'neckBase',
      'upperArm',
      'wrist',
      'thigh',
      'knee',
    ] as const) {
      WOMEN.slice(1).forEach((body, i) =>
        expect(body[girth], girth).toBeGreaterThanOrEqual(WOMEN[i]![girth]),
      );
    }
  });

  it('stands near the survey’s mean woman at bust 92 (ANSUR I, docs/trade.md 8.3: bust 90.7, one SD either way)', () => {
    const body = WOMEN.find((b) => b.label === '92')!;
    const means = {
      backWaist: [367, 25],
      scyeDepth: [186, 14],
      shoulder: [145, 11],
      neckBase: [346, 16],
      upperArm: [292, 24],
      bustSpread: [185, 16],
      bustHeight: [268, 22],
      acrossBack: [352, 27],
      arm: [547, 30],
    } as const;
    for (const [measure, [mean, sd]] of Object.entries(means)) {
      expect(Math.abs(body[measure as keyof typeof means] - mean), measure).toBeLessThan(sd);
    }
  });
});
