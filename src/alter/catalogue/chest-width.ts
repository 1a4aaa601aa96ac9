import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { widenAcross } from '../ways/across-width.ts';
import { inch, lengthParam, wider } from '../entry/param.ts';

export const chestWidth: Alteration = {
  id: 'chest-width',
  group: 'front and seat',
  name: t`Broad or narrow chest`,
  when: t`The front cuts in at the armholes (broad), or folds stand upright between them (narrow).`,
  source: 'docs/trade.md 5.11 for the front (memory)',
  params: [
    lengthParam('amount', t`on each half`, {
      default: inch(-0.25),
      min: -25,
      max: 25,
      limit: {
        most: inch(0.5),
        say: t`More than this changes how the shoulder lies: alter the shoulder length too.`,
        source: 'docs/trade.md 5.11',
      },
    }),
  ],
  reach: [
    t`front armhole between tip and underarm`,
    t`the sleeve cap's front half`,
    t`panel seam where it meets the armhole`,
    t`lining`,
  ],
  shows: { on: 'bodice', params: { amount: -14 } },
  make: (change, values) => widenAcross(change, 'front', values.mm('amount'), 0),
  sentence(values) {
    const mm = values.mm('amount');
    return t`Front: ${wider(mm)} across the chest by ${len(Math.abs(mm))} on each half, nothing at the shoulder tip; sleeve cap to match`;
  },
};
