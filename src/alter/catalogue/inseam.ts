import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { inch, lengthParam, longer } from '../entry/param.ts';
import { needTrousers } from '../ways/trousers.ts';
import { lineBetween, slideHalf } from '../ways/slide-half.ts';
import { levelHeight } from '../role/height.ts';

export const inseam: Alteration = {
  id: 'inseam',
  group: 'trousers',
  name: t`Inside leg length`,
  when: t`The legs end too high or too low; crotch depth is right.`,
  source: 'docs/trade.md 5.2 (leg; half above, half below the knee: common practice)',
  params: [
    lengthParam('amount', t`each leg`, {
      default: inch(1),
      min: -200,
      max: 200,
      limit: {
        most: inch(4),
        say: t`Check where the knee of the pattern comes to lie.`,
        source: 'common practice',
      },
    }),
  ],
  reach: [t`front and back legs`, t`lining`],
  shows: { on: 'trousers', params: { amount: 80 } },
  make(change, values) {
    const half = values.mm('amount') / 2;
    const all = needTrousers(change.garment);
    const knee = all.every((p) => levelHeight(p, 'knee') !== undefined);
    const fold = Math.max(0, -half);
    for (const part of ['front', 'back'] as const) {
      const slide = (lower: string, upper: string, amount: number): void =>
        slideHalf(change, part, {
          line: (p) => lineBetween(p, [lower], [upper, 'hip'], 0.5, Math.max(fold, -amount)),
          centre: amount,
          side: amount,
          moves: 'below',
        });
      if (knee) {
        slide('hem', 'knee', half);
        slide('knee', 'crotch', half);
      } else slide('hem', 'crotch', 2 * half);
    }
  },
  sentence: (values) =>
    t`Trousers: ${longer(values.mm('amount'))} the legs by ${len(Math.abs(values.mm('amount')))}, half above and half below the knee`,
};
