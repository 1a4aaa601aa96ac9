import { t, len, edgesOf, hasEdge } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { cut, draw } from '../follow/change.ts';
import { changeIntake, dartsAt } from '../dart/dart-intake.ts';
import { clearUpright, extent, upDown } from '../role/height.ts';
import { slidePart } from '../move/slide.ts';
import { makeDartOn } from '../follow/dart-change.ts';
import { easeSeams } from '../follow/dart-seams.ts';
import { choiceParam, inch, lengthParam, wider } from '../entry/param.ts';
import { needPanels, withEdge } from '../role/roles.ts';
import { pathAt } from '../../geometry/index.ts';

/** A back shoulder dart is about this long (common practice). */
const SHOULDER_DART_MM = 80;

/** Pieces that reach across the back between the armholes: those with the shoulder, and under a yoke the body, which is slashed below it. */
const carriesBack = (piece: DrawnPiece): boolean =>
  hasEdge(piece, 'shoulder') || (hasEdge(piece, 'armhole') && !hasEdge(piece, 'panel'));

export const backWidth: Alteration = {
  id: 'back-width',
  group: 'back',
  name: t`Broad or narrow back`,
  when: t`The back is tight on reaching forward (broad), or stands in upright folds between the armholes (narrow).`,
  source: 'docs/trade.md 5.11 (memory)',
  params: [
    lengthParam('amount', t`on each half`, {
      default: inch(0.375),
      min: -25,
      max: 30,
      limit: {
        most: inch(0.75),
        say: t`${len(inch(1 / 2))} on each half is usual; for more take the next size in the back.`,
        source: 'docs/trade.md 5.11',
      },
    }),
    choiceParam('shoulder', t`what the shoulder seam gains`, [
      { id: 'ease', name: t`is eased in` },
      { id: 'dart', name: t`goes into a shoulder dart` },
    ]),
  ],
  reach: [
    t`back from mid shoulder straight down: armhole and side seam move out whole and keep their length`,
    t`shoulder: eased or darted, so that it still matches the front`,
    t`waist: into its dart, where there is one`,
    t`facing, yoke, lining, waistband`,
  ],
  shows: { on: 'bodice', params: { amount: 15, shoulder: 'ease' } },
  make(change, values) {
    const mm = values.mm('amount');
    withEdge(change.garment, 'back', 'shoulder');
    for (const panel of needPanels(change.garment, 'back').filter(carriesBack)) {
      cut(change, panel.id, (piece) => {
        const shoulder = edgesOf(piece, 'shoulder')[0];
        const { left, right } = extent(piece);
        const x = clearUpright(piece, shoulder ? pathAt(shoulder.path, 0.5).x : (left + right) / 2, [
          'armhole',
        ]);
        const { low, high } = upDown(piece, x);
        return (p) => slidePart(p, { from: high, to: low, atFrom: mm, atTo: mm });
      });
      draw(change, panel.id, (piece) => {
        const darts = dartsAt(piece, 'waist');
        return darts.reduce((p, dart) => changeIntake(p, dart, mm / darts.length), piece);
      });
    }
    for (const panel of withEdge(change.garment, 'back', 'shoulder')) {
      const shoulder = edgesOf(panel, 'shoulder')[0]!;
      if (values.word('shoulder') === 'dart' && mm > 3) {
        const mouth = pathAt(shoulder.path, 0.45);
        makeDartOn(change, panel.id, shoulder.id, 0.45, { x: mouth.x, y: mouth.y - SHOULDER_DART_MM }, mm, {
          id: 'shoulder-dart',
          say: 'shoulder dart',
          serves: 'shoulder',
        });
      } else {
        easeSeams(
          change,
          panel.id,
          edgesOf(panel, 'shoulder').map((e) => e.id),
          mm,
        );
      }
    }
  },
  sentence(values) {
    const mm = values.mm('amount');
    return t`Back: ${wider(mm)} across by ${len(Math.abs(mm))} on each half, slashed from mid shoulder straight down; shoulder ${values.word('shoulder') === 'dart' && mm > 3 ? t`darted` : t`eased`}`;
  },
};
