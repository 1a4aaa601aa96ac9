import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { chestLine } from '../ways/chest-line.ts';
import { inch, lengthParam, longer } from '../entry/param.ts';
import { slideHalf } from '../ways/slide-half.ts';

export const chestLength: Alteration = {
  id: 'chest-length',
  group: 'length',
  name: t`Length above the bust line`,
  when: t`Only the part above the armhole line is too long or too short: neck and shoulders stand off, or the armhole cuts in.`,
  source: 'docs/trade.md 5.2 (across the chest, midway between shoulder and underarm; common practice)',
  params: [
    lengthParam('amount', t`front and back`, {
      default: 0,
      min: -40,
      max: 40,
      limit: {
        most: inch(0.75),
        say: t`The armhole grows or shrinks by the same amount on both halves.`,
        source: 'common practice',
      },
    }),
  ],
  reach: [t`front and back`, t`sleeve cap: as much higher or lower`, t`facings, panel seams, linings`],
  shows: { on: 'bodice', params: { amount: 20 } },
  make(change, values) {
    const amount = values.mm('amount');
    for (const half of ['front', 'back'] as const) {
      slideHalf(change, half, {
        line: chestLine(change.garment, half, Math.max(0, -amount)),
        centre: amount,
        side: amount,
        moves: 'above',
      });
    }
  },
  sentence: (values) =>
    t`Front and back: ${longer(values.mm('amount'))} ${len(Math.abs(values.mm('amount')))} across the chest, armhole and sleeve cap with it`,
};
