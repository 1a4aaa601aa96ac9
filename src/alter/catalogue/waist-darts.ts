import { timesCut, t, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { draw } from '../follow/change.ts';
import { changeIntake, dartsAt } from '../dart/dart-intake.ts';
import { inch, lengthParam, wider } from '../entry/param.ts';
import { Refusal } from '../words/refusal.ts';
import { needPanels } from '../role/roles.ts';

export const waistDarts: Alteration = {
  id: 'waist-darts',
  group: 'width',
  name: t`Waist by the darts`,
  when: t`Only the waist is too tight or too loose; hip and bust are right.`,
  source: 'docs/trade.md 5.3 (waist only: each dart side takes C / (2 × darts); derived)',
  params: [
    lengthParam('total', t`all round`, {
      default: inch(1),
      min: -120,
      max: 120,
      limit: {
        most: inch(2),
        say: t`A dart side moved more than ${len(inch(1 / 4))} wants a second dart.`,
        source: 'docs/trade.md 5.0 (1/4 in per dart side; memory)',
      },
    }),
  ],
  reach: [t`waist darts of front and back`, t`linings`, t`waistband or facing at the matching place`],
  shows: { on: 'skirt', params: { total: -36 } },
  make(change, values) {
    const all = (['front', 'back'] as const)
      .flatMap((half) => needPanels(change.garment, half))
      .map((piece) => ({ piece, darts: dartsAt(piece, 'waist') }))
      .filter((x) => x.darts.length > 0);
    const count = all.reduce((sum, x) => sum + x.darts.length * timesCut(x.piece), 0);
    if (count === 0) throw new Refusal('no-dart', { role: 'waist-dart', on: null });
    const each = -values.mm('total') / count;
    for (const { piece, darts } of all) {
      draw(change, piece.id, (p) => darts.reduce((q, dart) => changeIntake(q, dart, each), p));
    }
  },
  sentence: (values) =>
    t`Waist darts: ${wider(values.mm('total'))} the waist by ${len(Math.abs(values.mm('total')))} all round, shared by all darts`,
};
