import { timesCut, sideOf, t, type Phrase, len } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { cut, draw } from '../follow/change.ts';
import { changeIntake, dartsAt } from '../dart/dart-intake.ts';
import { dartOf } from '../dart/dart.ts';
import { clearUpright, extent, upDown } from '../role/height.ts';
import { choiceParam, inch, lengthParam, wider } from '../entry/param.ts';
import { needPanels } from '../role/roles.ts';
import { slidePart } from '../move/slide.ts';

/** Where to slash upright: midway between centre and side, beside a dart rather than through it. */
function slashAt(piece: DrawnPiece): number {
  const { left, right } = extent(piece);
  const x = (left + right) / 2;
  for (const { id } of piece.darts) {
    const d = dartOf(piece, id);
    const from = Math.min(d.a.x, d.b.x, d.point.x) - 8;
    const to = Math.max(d.a.x, d.b.x, d.point.x) + 8;
    if (x > from && x < to && to - from < (right - left) / 2) return to;
  }
  return x;
}

export const widthSlash: Alteration = {
  id: 'width-slash',
  group: 'width',
  name: t`Width by slash`,
  when: t`More than ${len(inch(2))} all round is missing or too much, or the width is needed across the whole panel.`,
  source: 'docs/trade.md 5.3 (> 2 in: upright slash at mid-panel, C/4 in each; memory)',
  params: [
    lengthParam('total', t`all round`, {
      default: inch(2),
      min: -200,
      max: 300,
      limit: {
        most: inch(4),
        say: t`That is two sizes: take another size at that level.`,
        source: 'docs/trade.md 5.3 (one size is 2 in at the hip)',
      },
    }),
    choiceParam('shape', t`where it opens`, [
      { id: 'even', name: t`evenly from top to bottom` },
      { id: 'hem', name: t`at the hem, nothing at the top` },
      { id: 'top', name: t`at the top, nothing at the hem` },
    ]),
    choiceParam('dart', t`what it adds at the waist`, [
      { id: 'dart', name: t`goes back into the dart` },
      { id: 'keep', name: t`stays as width` },
    ]),
  ],
  reach: [t`the widest panel of front and back`, t`linings`, t`waist darts re-made, or waistband`],
  shows: { on: 'skirt', params: { total: 120, shape: 'even', dart: 'dart' } },
  make(change, values) {
    const chosen = (['front', 'back'] as const).flatMap((half) => {
      const all = needPanels(change.garment, half);
      const width = (p: DrawnPiece): number => extent(p).right - extent(p).left;
      const sides = [undefined, 'left', 'right'] as const;
      return sides.flatMap((side) => {
        const own = all.filter((p) => sideOf(p) === side).toSorted((a, b) => width(b) - width(a));
        return own.slice(0, 1);
      });
    });
    const parts = chosen.reduce((sum, p) => sum + timesCut(p), 0);
    const each = values.mm('total') / parts;
    const shape = values.word('shape');
    for (const panel of chosen) {
      cut(change, panel.id, (piece) => {
        const { low, high } = upDown(piece, clearUpright(piece, slashAt(piece)));
        const top = shape === 'hem' ? 0 : each;
        const bottom = shape === 'top' ? 0 : each;
        return (p) => slidePart(p, { from: high, to: low, atFrom: top, atTo: bottom });
      });
      if (shape === 'hem' || values.word('dart') !== 'dart') continue;
      draw(change, panel.id, (piece) => {
        const darts = dartsAt(piece, 'waist');
        return darts.reduce((p, dart) => changeIntake(p, dart, each / darts.length), piece);
      });
    }
  },
  sentence(values) {
    const total = values.mm('total');
    const shapes: Readonly<Record<string, Phrase>> = {
      even: t`evenly`,
      hem: t`at the hem`,
      top: t`at the top`,
    };
    const shape = shapes[values.word('shape')] ?? t``;
    return t`Front and back: ${wider(total)} by ${len(Math.abs(total))} all round, slashed upright ${shape}`;
  },
};
