import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { inch, lengthParam, longer } from '../entry/param.ts';
import { needTrousers } from '../ways/trousers.ts';
import { lineBetween, slideHalf } from '../ways/slide-half.ts';

export const crotchDepth: Alteration = {
  id: 'crotch-depth',
  group: 'trousers',
  name: t`Crotch depth`,
  when: t`The trousers cut in at the crotch when seated, or the crotch hangs low.`,
  source: 'docs/trade.md 5.2 (line between waist and hip, same on all panels; common practice)',
  params: [
    lengthParam('amount', t`deeper, front and back`, {
      default: inch(0.5),
      min: -50,
      max: 60,
      limit: { most: inch(1), say: t`Split a larger change between two lines.`, source: 'docs/trade.md 5.0' },
    }),
  ],
  reach: [t`front and back legs`, t`fly, zip and pockets in that length`, t`lining`],
  shows: { on: 'trousers', params: { amount: 40 } },
  make(change, values) {
    const amount = values.mm('amount');
    needTrousers(change.garment);
    for (const half of ['front', 'back'] as const) {
      slideHalf(change, half, {
        line: (piece) => lineBetween(piece, ['hip', 'crotch'], ['waist'], 0.5, Math.max(0, -amount)),
        centre: amount,
        side: amount,
        moves: 'below',
      });
    }
  },
  sentence: (values) =>
    t`Trousers: ${longer(values.mm('amount'))} the crotch depth by ${len(Math.abs(values.mm('amount')))}, all panels`,
};
