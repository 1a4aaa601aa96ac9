import { t } from '../../garment/index.ts';
import { alterFinding } from '../words/words-table.ts';
import type { Alteration } from '../entry/alteration.ts';
import { dartFronts } from '../ways/bust-fronts.ts';
import { BUST_REACH, bustWidth, sayBust } from '../ways/bust-words.ts';
import { cut, tell } from '../follow/change.ts';
import { dartOf } from '../dart/dart.ts';
import { armholeHinge, bustPoint, bustTurn, sideDart, slashBust } from '../ways/full-bust.ts';
import { Refusal } from '../words/refusal.ts';

export const bustSideDart: Alteration = {
  id: 'bust-side-dart',
  group: 'bust',
  name: t`Large or small bust, side dart`,
  when: t`Drag lines run to the bust point and the hem rides up in front (large), or the front is loose and long over the bust (small).`,
  source: 'docs/trade.md 5.10 (slash method; table of turns derived)',
  params: [bustWidth],
  reach: BUST_REACH,
  shows: { on: 'bodice', params: { width: 22 } },
  make(change, values) {
    const width = values.mm('width');
    for (const front of dartFronts(change.garment)) {
      cut(change, front.id, (piece) => {
        const bust = bustPoint(piece);
        const dart = sideDart(piece, bust);
        if (dart === undefined) {
          throw new Refusal('no-side-dart', { piece: piece.name }, { piece: piece.id });
        }
        const { a, b } = dartOf(piece, dart);
        const slash = {
          bust,
          hinge: armholeHinge(piece),
          side: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 },
          width,
        };
        const { angle, drop } = bustTurn(slash);
        tell(
          change,
          alterFinding(
            'front-longer',
            'note',
            { piece: piece.id },
            { piece: piece.name, drop, angle: Math.abs((angle * 180) / Math.PI) },
            { amount: drop },
          ),
        );
        return slashBust(slash);
      });
    }
  },
  sentence: (values) =>
    t`Front: ${sayBust(values.mm('width'))}, side dart ${values.mm('width') < 0 ? t`narrower` : t`wider`}`,
};
