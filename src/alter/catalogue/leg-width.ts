import { t, len, type Phrase } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { draw } from '../follow/change.ts';
import { choiceParam, inch, lengthParam, wider } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import { needTrousers } from '../ways/trousers.ts';
import { widenLevel } from '../ways/widen-level.ts';
import { Refusal } from '../words/refusal.ts';

export const legWidth: Alteration = {
  id: 'leg-width',
  group: 'trousers',
  name: t`Leg width`,
  when: t`The leg is too tight or too wide at thigh, knee or hem.`,
  source: 'docs/trade.md 5.0 (quarter rule on the four edges of a leg; derived)',
  params: [
    choiceParam('level', t`level`, [
      { id: 'hem', name: t`hem` },
      { id: 'knee', name: t`knee` },
      { id: 'crotch', name: t`thigh` },
    ]),
    lengthParam('amount', t`round each leg`, {
      default: inch(1),
      min: -120,
      max: 160,
      limit: {
        most: inch(2),
        say: t`More than ${len(inch(1 / 2))} at each edge moves the crease: slash instead.`,
        source: 'docs/trade.md 5.0',
      },
    }),
    choiceParam('below', t`below that level`, [
      { id: 'taper', name: t`taper to nothing` },
      { id: 'parallel', name: t`carry on to the hem` },
    ]),
  ],
  reach: [t`inside and outside leg, front and back, a quarter each`, t`lining`],
  shows: { on: 'trousers', params: { level: 'hem', amount: 120 } },
  make(change, values) {
    const quarter = values.mm('amount') / 4;
    const level = values.word('level');
    const carry = { below: values.word('below') === 'parallel' };
    let met = 0;
    for (const leg of needTrousers(change.garment)) {
      draw(change, leg.id, (piece) => {
        const pulls = [
          ...widenLevel(piece, 'side', level, quarter, carry),
          ...widenLevel(piece, 'inseam', level, -quarter, carry),
        ];
        met += pulls.length;
        return pullEdges(piece, pulls);
      });
    }
    if (met === 0) throw new Refusal('no-level', { on: { role: 'leg' }, level }, { level });
  },
  sentence(values) {
    const names: Readonly<Record<string, Phrase>> = { hem: t`hem`, knee: t`knee`, crotch: t`thigh` };
    const name = names[values.word('level')] ?? t``;
    const mm = values.mm('amount');
    return t`Trousers: ${wider(mm)} each leg by ${len(Math.abs(mm))} at the ${name}, a quarter at each seam edge`;
  },
};
