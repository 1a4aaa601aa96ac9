import { t } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { dartFronts } from '../ways/bust-fronts.ts';
import { BUST_REACH, bustWidth, sayBust } from '../ways/bust-words.ts';
import { cut } from '../follow/change.ts';
import { dartsAt } from '../dart/dart-intake.ts';
import { armholeHinge, bustDarts, bustPoint, slashBust } from '../ways/full-bust.ts';
import { Refusal } from '../words/refusal.ts';

export const bustWaistDart: Alteration = {
  id: 'bust-waist-dart',
  group: 'bust',
  name: t`Large or small bust, waist dart`,
  when: t`As with the side dart, on a front whose bust is shaped by its waist dart alone.`,
  source: 'docs/trade.md 5.10 (slash method through the waist dart; derived)',
  params: [bustWidth],
  reach: BUST_REACH,
  shows: { on: 'bodice', params: { width: 16 } },
  make(change, values) {
    const width = values.mm('width');
    for (const front of dartFronts(change.garment)) {
      cut(change, front.id, (piece) => {
        const bust = bustPoint(piece);
        const mine = bustDarts(piece, bust);
        if (!dartsAt(piece, 'waist').some((id) => mine.includes(id))) {
          throw new Refusal('no-waist-dart', { piece: piece.name }, { piece: piece.id });
        }
        return slashBust({ bust, hinge: armholeHinge(piece), width });
      });
    }
  },
  sentence: (values) =>
    t`Front: ${sayBust(values.mm('width'))}, waist dart ${values.mm('width') < 0 ? t`narrower` : t`wider`}`,
};
