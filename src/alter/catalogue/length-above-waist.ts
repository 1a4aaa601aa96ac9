import { t, type Phrase, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { inch, lengthParam, longer } from '../entry/param.ts';
import { lineBetween, slideHalf } from '../ways/slide-half.ts';

const LIMIT = {
  most: inch(1),
  say: t`Split a larger change between two lines, so that no single fold or gap distorts the outline.`,
  source: 'docs/trade.md 5.0 (one fold at most 1 in; memory)',
};
const amount = (id: string, name: Phrase) =>
  lengthParam(id, name, { default: 0, min: -80, max: 80, limit: LIMIT });

export const lengthAboveWaist: Alteration = {
  id: 'length-above-waist',
  group: 'length',
  name: t`Length above the waist`,
  when: t`The waist line of the garment sits lower or higher than the waist.`,
  source: 'docs/trade.md 5.2 (common practice; folding rule CWU17, seen)',
  params: [
    amount('back', t`at centre back`),
    amount('front', t`at centre front`),
    lengthParam('side', t`at the side seam`, {
      default: 0,
      min: -80,
      max: 80,
      limit: LIMIT,
      blank: t`as at centre front`,
    }),
  ],
  reach: [
    t`front and back panels`,
    t`their linings and facings`,
    t`the opening in that length and its buttons`,
  ],
  shows: { on: 'bodice', params: { back: -30, front: -30 } },
  make(change, values) {
    const front = values.mm('front');
    const side = values.maybe('side') ?? front;
    for (const [half, centre] of [
      ['front', front],
      ['back', values.mm('back')],
    ] as const) {
      if (centre === 0 && side === 0) continue;
      const fold = Math.max(0, -centre, -side);
      slideHalf(change, half, {
        // About 2 in above the waist where no line is printed (trade.md 5.2): a third of the way to the bust.
        line: (piece) =>
          lineBetween(piece, ['waist'], ['bust', 'under-bust', 'armhole', 'shoulder'], 0.35, fold),
        centre,
        side,
        moves: 'below',
      });
    }
  },
  sentence(values) {
    const front = values.mm('front');
    const back = values.mm('back');
    const side = values.maybe('side') ?? front;
    const at = (mm: number): Phrase => t`${longer(mm)} ${len(Math.abs(mm))}`;
    const part = (name: Phrase, mm: number): Phrase => {
      if (mm === side) return t`${name}: ${mm === 0 ? t`nothing changes` : at(mm)} above the waist`;
      if (mm === 0)
        return t`${name}: ${at(side)} above the waist at the side seam, tapering to nothing at the centre`;
      const end =
        side === 0
          ? t`tapering to nothing`
          : mm * side < 0
            ? t`and ${at(side)}`
            : t`tapering to ${len(Math.abs(side))}`;
      return t`${name}: ${at(mm)} above the waist, ${end} at the side seam`;
    };
    return front === back && side === front
      ? part(t`Front and back`, front)
      : t`${part(t`Back`, back)}. ${part(t`Front`, front)}`;
  },
};
