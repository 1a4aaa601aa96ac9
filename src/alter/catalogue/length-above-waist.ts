import { say } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { inch, lengthParam, longer } from '../entry/param.ts';
import { lineBetween, slideHalf } from '../ways/slide-half.ts';

const LIMIT = {
  most: inch(1),
  say: 'Split a larger change between two lines, so that no single fold or gap distorts the outline.',
  source: 'docs/trade.md 5.0 (one fold at most 1 in; memory)',
};
const amount = (id: string, name: string) =>
  lengthParam(id, name, { default: 0, min: -80, max: 80, limit: LIMIT });

export const lengthAboveWaist: Alteration = {
  id: 'length-above-waist',
  group: 'length',
  name: 'Length above the waist',
  when: 'The waist line of the garment sits lower or higher than the waist.',
  source: 'docs/trade.md 5.2 (common practice; folding rule CWU17, seen)',
  params: [
    amount('back', 'at centre back'),
    amount('front', 'at centre front'),
    lengthParam('side', 'at the side seam', {
      default: 0,
      min: -80,
      max: 80,
      limit: LIMIT,
      blank: 'as at centre front',
    }),
  ],
  reach: ['front and back panels', 'their linings and facings', 'the opening in that length and its buttons'],
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
    const at = (mm: number): string => `${longer(mm)} ${say(Math.abs(mm))}`;
    const part = (name: string, mm: number): string => {
      if (mm === side) return `${name}: ${mm === 0 ? 'nothing changes' : at(mm)} above the waist`;
      if (mm === 0)
        return `${name}: ${at(side)} above the waist at the side seam, tapering to nothing at the centre`;
      const end =
        side === 0
          ? 'tapering to nothing'
          : mm * side < 0
            ? `and ${at(side)}`
            : `tapering to ${say(Math.abs(side))}`;
      return `${name}: ${at(mm)} above the waist, ${end} at the side seam`;
    };
    return front === back && side === front
      ? part('Front and back', front)
      : `${part('Back', back)}. ${part('Front', front)}`;
  },
};
