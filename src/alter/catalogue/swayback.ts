import { t, len, edgesOf } from '../../garment/index.ts';
import { alterFinding } from '../words/words-table.ts';
import { pathEnd, pathStart } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { tell } from '../follow/change.ts';
import { extent, levelHeight } from '../role/height.ts';
import { choiceParam, inch, lengthParam } from '../entry/param.ts';
import { slideHalf } from '../ways/slide-half.ts';
import { panels } from '../role/roles.ts';
import { giveAtSide, onFold, uprightCentre } from '../ways/upright-centre.ts';

/** In a bodice that ends at the waist the fold lies this much above its edge (1 to 2 in, trade.md 5.9). */
const ABOVE_MM = 38;

function waistLine(piece: DrawnPiece): number | undefined {
  const waist = levelHeight(piece, 'waist');
  if (waist === undefined) return undefined;
  const { low, high } = extent(piece);
  if (high - waist < ABOVE_MM) return undefined;
  return waist - low > ABOVE_MM ? waist : waist + ABOVE_MM;
}

export const swayback: Alteration = {
  id: 'swayback',
  group: 'back',
  name: t`Swayback, wedge at the waist`,
  when: t`Level folds lie across the small of the back. Check the hip first: too tight a hip makes the same folds.`,
  source: 'docs/trade.md 5.9 method 1 (swing derived)',
  params: [
    lengthParam('amount', t`folded out at centre back`, {
      default: inch(0.5),
      min: -30,
      max: 35,
      limit: {
        most: inch(1),
        say: t`Between ${len(inch(1 / 4))} and ${len(inch(3 / 4))} is usual.`,
        source: 'docs/trade.md 5.9 (memory)',
      },
    }),
    choiceParam('centre', t`centre back below the fold`, [
      { id: 'straight', name: t`made straight, the swing given to the side` },
      { id: 'shaped', name: t`left shaped (centre back seam)` },
    ]),
  ],
  reach: [
    t`back panels and lining`,
    t`side seam keeps its length`,
    t`hem: the swing at the centre, shown with its amount`,
  ],
  shows: { on: 'panels', params: { amount: 22, centre: 'straight' } },
  make(change, values) {
    const amount = values.mm('amount');
    slideHalf(change, 'back', { line: waistLine, centre: -amount, side: 0, moves: 'below' });
    const swing = panels(change.garment, 'back').reduce((most, piece) => {
      const centre = edgesOf(piece, 'centre')[0];
      if (!centre) return most;
      const off = Math.abs(pathStart(centre.path).x - pathEnd(centre.path).x);
      return Math.max(most, off);
    }, 0);
    const straight = values.word('centre') === 'straight';
    const upright = uprightCentre(change, 'back', 'bottom', (p) => straight || onFold(p));
    const off = upright.most;
    if (off !== 0) giveAtSide(change, 'back', upright);
    tell(change, alterFinding('centre-swings', 'note', {}, { swing, off }, { amount: swing }));
  },
  sentence(values) {
    const mm = values.mm('amount');
    return t`Back: ${len(Math.abs(mm))} ${mm < 0 ? t`let in` : t`folded out`} at centre back on the waist line, nothing at the side seam`;
  },
};
