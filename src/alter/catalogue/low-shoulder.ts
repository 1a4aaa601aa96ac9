import { t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { choiceParam, inch, lengthParam } from '../entry/param.ts';
import { partSides } from '../follow/part-sides.ts';
import { needPanels } from '../role/roles.ts';
import { slopeShoulder } from '../ways/slope-shoulder.ts';

export const lowShoulder: Alteration = {
  id: 'low-shoulder',
  group: 'shoulder',
  name: t`One shoulder lower`,
  when: t`Folds run from the neck to one underarm only.`,
  source: 'docs/trade.md 5.4 (one side only, cut singly; memory)',
  params: [
    choiceParam('side', t`lower side`, [
      { id: 'left', name: t`left` },
      { id: 'right', name: t`right` },
    ]),
    lengthParam('amount', t`lower at the tip`, {
      default: inch(0.375),
      min: -25,
      max: 30,
      limit: {
        most: inch(0.5),
        say: t`Beyond this a shoulder pad on that side does it better.`,
        source: 'docs/trade.md 5.4',
      },
    }),
  ],
  reach: [
    t`front and back of that side only: left and right become pieces of their own`,
    t`facings and lining of that side`,
    t`armhole keeps its size`,
  ],
  shows: { on: 'bodice', params: { side: 'left', amount: 18 } },
  make(change, values) {
    const side = values.word('side') === 'left' ? 'left' : 'right';
    partSides(
      change,
      [...needPanels(change.garment, 'front'), ...needPanels(change.garment, 'back')].map((p) => p.id),
    );
    slopeShoulder(change, -values.mm('amount'), side);
  },
  sentence: (values) =>
    t`${values.word('side') === 'left' ? t`Left` : t`Right`} side: shoulder tip and underarm ${values.mm('amount') < 0 ? t`raised` : t`lowered`} by ${len(Math.abs(values.mm('amount')))}; left and right cut singly`,
};
