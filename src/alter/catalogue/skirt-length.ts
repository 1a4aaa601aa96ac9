import { t, len, edgesOf, hasEdge } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { choiceParam, inch, lengthParam, longer } from '../entry/param.ts';
import { draw } from '../follow/change.ts';
import { pullEdges } from '../move/pull.ts';
import { needPanels } from '../role/roles.ts';
import { runOn } from '../move/run-on.ts';
import { lineBetween, slideHalf } from '../ways/slide-half.ts';

export const skirtLength: Alteration = {
  id: 'skirt-length',
  group: 'length',
  name: t`Skirt length`,
  when: t`The hem should end lower or higher; the hip line stays where it is.`,
  source:
    'docs/trade.md 5.2 (line below the hip, about 6 in on gored skirts, or at the hem; common practice)',
  params: [
    lengthParam('amount', t`all round`, {
      default: 0,
      min: -600,
      max: 400,
      limit: {
        most: inch(6),
        say: t`Check the width at the hem: over this it is no longer the skirt as designed.`,
        source: 'common practice',
      },
    }),
    choiceParam('where', t`where`, [
      { id: 'line', name: t`between hip and hem, hem width kept` },
      { id: 'hem', name: t`at the hem, side lines run on` },
    ]),
  ],
  reach: [t`every panel round the body`, t`linings`, t`vent and closure`],
  shows: { on: 'skirt', params: { amount: 80 } },
  make(change, values) {
    const amount = values.mm('amount');
    for (const half of ['front', 'back'] as const) {
      if (values.word('where') === 'line') {
        slideHalf(change, half, {
          line: (piece) =>
            lineBetween(piece, ['hem'], ['hip', 'high-hip', 'waist'], 0.6, Math.max(0, -amount)),
          centre: amount,
          side: amount,
          moves: 'below',
        });
        continue;
      }
      for (const panel of needPanels(change.garment, half).filter((p) => hasEdge(p, 'hem'))) {
        draw(change, panel.id, (piece) =>
          pullEdges(
            piece,
            edgesOf(piece, 'hem').flatMap((hem) => runOn(piece, hem.id, amount)),
          ),
        );
      }
    }
  },
  sentence(values) {
    const amount = values.mm('amount');
    const where = values.word('where') === 'hem' ? t`at the hem` : t`between hip and hem`;
    return t`All pieces round: ${longer(amount)} ${len(Math.abs(amount))} ${where}`;
  },
};
