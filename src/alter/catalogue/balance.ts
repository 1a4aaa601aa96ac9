import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { turnCap } from '../follow/cap-notch.ts';
import { chestLine } from '../ways/chest-line.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { slideHalf } from '../ways/slide-half.ts';

export const balance: Alteration = {
  id: 'balance',
  group: 'sides and balance',
  name: t`Front and back balance`,
  when: t`The hem swings up at one half and stands off at the other, although side seams and widths are right: one half is too short above the armhole line.`,
  source:
    'docs/trade.md 5.8 (front opens or closes while the back keeps its length: HERTZ, seen); halving common practice',
  params: [
    lengthParam('amount', t`front longer against the back`, {
      default: inch(0.5),
      min: -40,
      max: 40,
      limit: { most: inch(1), say: t`Check shoulder slope and bust first.`, source: 'common practice' },
    }),
  ],
  reach: [
    t`front and back across the chest, half each`,
    t`the sleeve's shoulder point goes with it`,
    t`facings, linings`,
  ],
  shows: { on: 'bodice', params: { amount: 25 } },
  make(change, values) {
    const half = values.mm('amount') / 2;
    slideHalf(change, 'front', {
      line: chestLine(change.garment, 'front'),
      centre: half,
      side: half,
      moves: 'above',
    });
    slideHalf(change, 'back', {
      line: chestLine(change.garment, 'back'),
      centre: -half,
      side: -half,
      moves: 'above',
    });
    turnCap(change, -half);
  },
  sentence(values) {
    const mm = values.mm('amount');
    const [front, back] = mm < 0 ? [t`shorten`, t`lengthen`] : [t`lengthen`, t`shorten`];
    return t`Balance: ${front} the front and ${back} the back by ${len(Math.abs(mm) / 2)} each, across the chest`;
  },
};
