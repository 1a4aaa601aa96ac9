import { t, edgesOf } from '../../garment/index.ts';
import { nearestPlace, shareAtPlace } from '../../geometry/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { dartFronts } from '../ways/bust-fronts.ts';
import { BUST_REACH, bustWidth, sayBust } from '../ways/bust-words.ts';
import { cut } from '../follow/change.ts';
import { makeDartOn } from '../follow/dart-change.ts';
import { dartOf } from '../dart/dart.ts';
import { armholeHinge, bustPoint, sideDart, slashBust } from '../ways/full-bust.ts';
import { inch } from '../entry/param.ts';
import { Refusal } from '../words/refusal.ts';
import { isTurned } from '../role/roles.ts';

/** A new side dart starts this far below the bust point's height at the seam and stops this far short of it (trade.md 5.10). */
const BELOW = inch(1.5);
const SHORT = inch(1);

export const bustNoDart: Alteration = {
  id: 'bust-no-dart',
  group: 'bust',
  name: t`Large bust, front without dart`,
  when: t`A front without a bust dart is too tight and too short over the bust: it gets one.`,
  source: 'docs/trade.md 5.10 (slash method, new side dart; memory)',
  params: [bustWidth],
  reach: [...BUST_REACH, t`a new side dart`],
  shows: { on: 'plain', params: { width: 20 } },
  make(change, values) {
    const width = values.mm('width');
    if (width < 0) throw new Refusal('no-bust-to-take', {});
    for (const front of dartFronts(change.garment)) {
      const bust = bustPoint(front);
      if (sideDart(front, bust) !== undefined) {
        throw new Refusal('has-side-dart', { piece: front.name }, { piece: front.id });
      }
      const side = edgesOf(front, 'side')[0]!;
      const near = nearestPlace(side.path, {
        x: bust.x + 1000 * (isTurned(front) ? -1 : 1),
        y: bust.y - BELOW,
      });
      const mouth = near.point;
      const way = Math.hypot(mouth.x - bust.x, mouth.y - bust.y);
      const point = {
        x: bust.x + ((mouth.x - bust.x) * SHORT) / way,
        y: bust.y + ((mouth.y - bust.y) * SHORT) / way,
      };
      const made = makeDartOn(change, front.id, side.id, shareAtPlace(side.path, near.place), point, 0, {
        id: 'side-dart',
        say: 'side dart',
        serves: 'bust',
      });
      cut(change, front.id, (piece) =>
        slashBust({
          bust: bustPoint(piece),
          hinge: armholeHinge(piece),
          side: dartOf(piece, made.dart.id).a,
          width,
        }),
      );
    }
  },
  sentence: (values) => t`Front: ${sayBust(values.mm('width'))}, with a new side dart`,
};
