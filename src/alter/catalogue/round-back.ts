import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { choiceParam, inch, lengthParam } from '../entry/param.ts';
import { upperBackWedge } from '../ways/upper-wedge.ts';

export const roundBack: Alteration = {
  id: 'round-back',
  group: 'back',
  name: t`Round upper back`,
  when: t`The back rides up and the collar stands off behind: the upper back is longer than the garment.`,
  source: 'docs/trade.md 5.7 (angles derived)',
  params: [
    lengthParam('amount', t`longer at centre back`, {
      default: inch(0.5),
      min: 0,
      max: 40,
      limit: {
        most: inch(0.75),
        say: t`Over ${len(inch(3 / 4))} use two slashes: make this alteration twice.`,
        source: 'docs/trade.md 5.7 (memory)',
      },
    }),
    choiceParam('excess', t`what the neckline gains (centre back on the fold)`, [
      { id: 'dart', name: t`goes into a neck dart` },
      { id: 'ease', name: t`is eased in` },
    ]),
  ],
  reach: [
    t`back above the blade line`,
    t`neckline, back facing, collar`,
    t`back lining`,
    t`armhole and its sleeve keep their size (the wedge hinges there)`,
  ],
  shows: { on: 'bodice', params: { amount: 20, excess: 'ease' } },
  make: (change, values) =>
    upperBackWedge(change, values.mm('amount'), values.word('excess') === 'dart' ? 'dart' : 'ease'),
  sentence: (values) =>
    t`Back: raised by ${len(values.mm('amount'))} at centre back on the blade line, nothing at the armhole; neckline excess ${values.word('excess') === 'dart' ? t`into a neck dart` : t`eased`} where the centre is on the fold`,
};
