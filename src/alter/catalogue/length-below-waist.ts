import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { inch, lengthParam, longer } from '../entry/param.ts';
import { lineBetween, slideHalf } from '../ways/slide-half.ts';

export const lengthBelowWaist: Alteration = {
  id: 'length-below-waist',
  group: 'length',
  name: t`Length below the waist`,
  when: t`The hip line, or the hem of a garment that ends at the hip, should sit lower or higher.`,
  source: 'docs/trade.md 5.2 (common practice)',
  params: [
    lengthParam('amount', t`all round`, {
      default: 0,
      min: -120,
      max: 150,
      limit: {
        most: inch(2),
        say: t`Above this the shape between waist and hip no longer lies where it was drafted to lie.`,
        source: 'common practice',
      },
    }),
  ],
  reach: [t`every panel round the body`, t`linings`, t`the opening in that length`],
  shows: { on: 'panels', params: { amount: 40 } },
  make(change, values) {
    const amount = values.mm('amount');
    for (const half of ['front', 'back'] as const) {
      slideHalf(change, half, {
        line: (piece) => lineBetween(piece, ['hip', 'high-hip', 'hem'], ['waist'], 0.6, Math.max(0, -amount)),
        centre: amount,
        side: amount,
        moves: 'below',
      });
    }
  },
  sentence(values) {
    const amount = values.mm('amount');
    return t`All pieces round: ${longer(amount)} ${len(Math.abs(amount))} below the waist`;
  },
};
