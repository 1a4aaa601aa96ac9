import { t, len, listOf } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { draw } from '../follow/change.ts';
import { levelHeight } from '../role/height.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';
import { slideHalf } from '../ways/slide-half.ts';
import { forkPulls, legs } from '../ways/trousers.ts';

export const trouserSeat: Alteration = {
  id: 'trouser-seat',
  group: 'trousers',
  name: t`Full or flat seat, trousers`,
  when: t`Full: the waist is pulled down behind when seated and the crotch cuts in. Flat: the seat hangs in folds.`,
  source: 'docs/trade.md 5.13 (wedge on the hip line, crotch point; memory)',
  params: [
    lengthParam('amount', t`opened on the hip line at centre back`, {
      default: inch(0.75),
      min: -35,
      max: 40,
      limit: {
        most: inch(1),
        say: t`Between ${len(inch(1 / 2))} and ${len(inch(1))} is usual.`,
        source: 'docs/trade.md 5.13',
      },
    }),
    lengthParam('point', t`back crotch point further out`, { default: inch(0.25), min: -25, max: 35 }),
  ],
  reach: [
    t`back leg: crotch seam longer by the amount, side seam as before`,
    t`inside leg down to the knee`,
    t`lining`,
  ],
  shows: { on: 'trousers', params: { amount: 30, point: 12 } },
  make(change, values) {
    const amount = values.mm('amount');
    const back = legs(change.garment, 'back');
    if (back.every((p) => levelHeight(p, 'hip') === undefined)) {
      throw new Refusal('no-level', { on: { piece: back[0]!.name }, level: 'hip' }, { level: 'hip' });
    }
    slideHalf(change, 'back', {
      line: (p) => levelHeight(p, 'hip'),
      centre: amount,
      side: 0,
      moves: 'above',
    });
    for (const leg of legs(change.garment, 'back')) {
      draw(change, leg.id, (piece) => pullEdges(piece, forkPulls(piece, values.mm('point'))));
    }
  },
  sentence(values) {
    const mm = values.mm('amount');
    const point = values.mm('point');
    const wedge = t`${len(Math.abs(mm))} ${mm < 0 ? t`folded out` : t`let in`} on the hip line at centre back, nothing at the side`;
    const crotch = t`crotch point ${len(Math.abs(point))} ${point < 0 ? t`shorter` : t`longer`}`;
    return t`Trouser back: ${listOf([...(mm === 0 && point !== 0 ? [] : [wedge]), ...(point === 0 ? [] : [crotch])], ';')}`;
  },
};
