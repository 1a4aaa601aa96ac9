import { t, len, edgesOf } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { draw } from '../follow/change.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import { withEdge } from '../role/roles.ts';

export const swaybackSeam: Alteration = {
  id: 'swayback-seam',
  group: 'back',
  name: t`Swayback, taken out at the neck`,
  when: t`As the wedge, where the grain of the whole back must stay square: the centre section slides down.`,
  source: 'docs/trade.md 5.9 method 3 (LPR pp. 140-143, seen second-hand)',
  params: [
    lengthParam('amount', t`slid down at centre back`, {
      default: inch(0.5),
      min: -20,
      max: 30,
      limit: {
        most: inch(1),
        say: t`Between ${len(inch(1 / 4))} and ${len(inch(3 / 4))} is usual.`,
        source: 'docs/trade.md 5.9 (memory)',
      },
    }),
  ],
  reach: [
    t`back neckline and inner shoulder end`,
    t`back facing and lining`,
    t`waist, hem, side seam and grain stay`,
  ],
  shows: { on: 'bodice', params: { amount: 18 } },
  make(change, values) {
    const by = { x: 0, y: -values.mm('amount') };
    for (const panel of withEdge(change.garment, 'back', 'neck')) {
      draw(change, panel.id, (piece) =>
        pullEdges(
          piece,
          edgesOf(piece, 'neck').flatMap((neck) => [
            { edge: neck.id, at: 0, by },
            { edge: neck.id, at: 1, by },
          ]),
        ),
      );
    }
  },
  sentence: (values) =>
    t`Back: centre section slid ${values.mm('amount') < 0 ? t`up` : t`down`} by ${len(Math.abs(values.mm('amount')))}; it comes out at the neckline, tapering to nothing at the shoulder tip`,
};
