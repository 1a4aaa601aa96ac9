import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { amountAndWidth, inch, lengthParam } from '../entry/param.ts';
import { overCurve } from '../ways/over-curve.ts';

export const seat: Alteration = {
  id: 'seat',
  group: 'front and seat',
  name: t`Full or flat seat`,
  when: t`Full: the hem rises behind and the skirt cups under the seat. Flat: the back hangs in folds.`,
  source: 'docs/trade.md 5.13 (memory)',
  params: [
    lengthParam('amount', t`longer at centre back`, {
      default: inch(0.5),
      min: -30,
      max: 40,
      limit: {
        most: inch(1),
        say: t`Between ${len(inch(1 / 4))} and ${len(inch(1))} is usual.`,
        source: 'docs/trade.md 5.13',
      },
    }),
    lengthParam('width', t`wider behind, all of it`, {
      default: 0,
      min: -60,
      max: 100,
      limit: {
        most: inch(2),
        say: t`More than ${len(inch(1 / 2))} at one side edge: slash instead.`,
        source: 'docs/trade.md 5.0',
      },
    }),
  ],
  reach: [t`back panels and lining`, t`waistband, facing, closure length`, t`side seam keeps its length`],
  shows: { on: 'skirt', params: { amount: 22, width: 40 } },
  make: (change, values) => overCurve(change, 'back', values.mm('amount'), values.mm('width')),
  sentence(values) {
    const [mm, width] = [values.mm('amount'), values.mm('width')];
    return amountAndWidth(t`Back`, t`over the seat at centre back, nothing at the side`, mm, width);
  },
};
