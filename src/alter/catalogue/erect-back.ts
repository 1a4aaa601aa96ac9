import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { upperBackWedge } from '../ways/upper-wedge.ts';

export const erectBack: Alteration = {
  id: 'erect-back',
  group: 'back',
  name: t`Erect or flat back`,
  when: t`Level folds lie across the back below the neck: the upper back is shorter than the garment.`,
  source: 'docs/trade.md 5.8 (reverse of the round back; memory)',
  params: [
    lengthParam('amount', t`folded out at centre back`, {
      default: inch(0.375),
      min: 0,
      max: 25,
      limit: {
        most: inch(0.75),
        say: t`More than this is the wrong back length altogether.`,
        source: 'docs/trade.md 5.7, 5.8',
      },
    }),
  ],
  reach: [
    t`back above the blade line`,
    t`neckline, back facing, collar`,
    t`back lining`,
    t`armhole keeps its size`,
  ],
  shows: { on: 'bodice', params: { amount: 16 } },
  make: (change, values) => upperBackWedge(change, -values.mm('amount'), 'ease'),
  sentence: (values) =>
    t`Back: ${len(values.mm('amount'))} folded out at centre back on the blade line, nothing at the armhole`,
};
