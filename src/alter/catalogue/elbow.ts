import { t, len, edgesOf } from '../../garment/index.ts';
import { alterFinding } from '../words/words-table.ts';
import { pathLineIntersections, shareAtPlace } from '../../geometry/index.ts';
import type { DrawnPiece, Edge } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { cut, tell } from '../follow/change.ts';
import { makeDartOn } from '../follow/dart-change.ts';
import { easeSeams } from '../follow/dart-seams.ts';
import { across, extent, levelHeight } from '../role/height.ts';
import { choiceParam, inch, lengthParam } from '../entry/param.ts';
import { Refusal } from '../words/refusal.ts';
import { isTurned, needSleeves, pieceOf } from '../role/roles.ts';
import { slidePart } from '../move/slide.ts';

/** An elbow dart reaches about this far in from the back seam (common practice). */
const DART_MM = 75;

const backSeam = (piece: DrawnPiece): Edge<'one'> => {
  const found = edgesOf(piece, 'underarm').find((e) => e.half === 'back');
  if (!found)
    throw new Refusal('no-underarm', { role: 'underarm', on: { piece: piece.name } }, { piece: piece.id });
  return found;
};

/** The elbow's own level, else half way between the hem and the underarm. */
const elbowHeight = (piece: DrawnPiece): number =>
  levelHeight(piece, 'elbow') ?? (extent(piece).low + (levelHeight(piece, 'bust') ?? 0)) / 2;

export const elbow: Alteration = {
  id: 'elbow',
  group: 'sleeve',
  name: t`Room at the elbow`,
  when: t`The sleeve pulls at the elbow when the arm is bent, or hangs empty there.`,
  source: 'docs/trade.md 5.12 (spread at the elbow line on the back; common practice)',
  params: [
    lengthParam('amount', t`longer on the back seam`, {
      default: inch(0.5),
      min: -25,
      max: 40,
      limit: { most: inch(1), say: t`More than this wants a two-piece sleeve.`, source: 'common practice' },
    }),
    choiceParam('excess', t`the added length`, [
      { id: 'ease', name: t`is eased in at the elbow` },
      { id: 'dart', name: t`goes into an elbow dart` },
    ]),
  ],
  reach: [t`sleeve lining`, t`underarm seam: the front keeps its length, the back is eased or darted to it`],
  shows: { on: 'bodice', params: { amount: 25, excess: 'dart' } },
  make(change, values) {
    const mm = values.mm('amount');
    for (const sleeve of needSleeves(change.garment)) {
      cut(change, sleeve.id, (piece) => {
        const y = elbowHeight(piece);
        const { left, right } = across(piece, y);
        // Front seam at the smaller x: hinge there, open at the back.
        return (p) => slidePart(p, { from: right, to: left, atFrom: mm, atTo: 0 });
      });
      const seam = backSeam(pieceOf(change.garment, sleeve.id));
      if (values.word('excess') === 'dart' && mm > 3) {
        const y = elbowHeight(pieceOf(change.garment, sleeve.id)) - mm / 2;
        const hit = pathLineIntersections(seam.path, { x: 0, y }, { x: 1, y })[0];
        if (!hit) throw new Refusal('no-elbow', { piece: sleeve.name }, { piece: sleeve.id });
        const inwards = isTurned(sleeve) ? DART_MM : -DART_MM;
        const point = { x: hit.point.x + inwards, y };
        makeDartOn(change, sleeve.id, seam.id, shareAtPlace(seam.path, hit.place), point, mm, {
          id: 'elbow-dart',
          say: 'elbow dart',
          serves: 'elbow',
        });
        continue;
      }
      easeSeams(change, sleeve.id, [seam.id], mm);
      tell(
        change,
        alterFinding(
          'elbow-eased',
          'note',
          { piece: sleeve.id, edge: seam.id },
          { piece: sleeve.name, by: mm },
          { amount: mm },
        ),
      );
    }
    change.capDone = true;
  },
  sentence(values) {
    const mm = values.mm('amount');
    return t`Sleeve: ${len(Math.abs(mm))} ${mm < 0 ? t`less` : t`more`} length at the elbow on the back seam, nothing on the front; ${values.word('excess') === 'dart' && mm > 3 ? t`taken up by a dart` : t`eased in`}`;
  },
};
