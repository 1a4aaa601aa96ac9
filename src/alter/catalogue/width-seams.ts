import { countOf, keyWord, len, percent, t } from '../../garment/index.ts';
import type { Half, Phrase } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { draw } from '../follow/change.ts';
import { choiceParam, inch, lengthParam, wider } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import { movedEdges } from '../ways/moved-edges.ts';
import { movableAt, needLevel, widenLevel } from '../ways/widen-level.ts';

const LEVELS = [
  { id: 'hip', name: t`hip` },
  { id: 'waist', name: t`waist` },
  { id: 'bust', name: t`bust` },
  { id: 'high-hip', name: t`high hip` },
  { id: 'hem', name: t`hem` },
] as const;

export const widthSeams: Alteration = {
  id: 'width-seams',
  group: 'width',
  name: t`Width by the side seams`,
  when: t`One level is too tight or too loose and the change is small.`,
  source: 'docs/trade.md 5.3 and the quarter rule of 5.0 (CWU17, seen)',
  params: [
    choiceParam('level', t`level`, LEVELS),
    lengthParam('total', t`all round`, {
      default: inch(1),
      min: -160,
      max: 160,
      limit: {
        most: inch(2),
        say: t`Above ${len(inch(2))} all round take another size at that level, or slash (width by slash).`,
        source: 'docs/trade.md 5.0 and 5.3 (memory)',
      },
    }),
    { id: 'front', name: t`share that goes to the front`, kind: 'share', default: 0.5, min: 0, max: 1 },
    choiceParam('below', t`below that level`, [
      { id: 'taper', name: t`taper to nothing` },
      { id: 'parallel', name: t`carry on to the hem` },
    ]),
  ],
  reach: [
    t`front and back at the side`,
    t`linings, pockets in the side seam`,
    t`waistband or facing at the side notch`,
    t`armhole and sleeve, at the bust`,
  ],
  shows: { on: 'skirt', params: { level: 'hip', total: 90, below: 'parallel' } },
  make(change, values) {
    const level = values.word('level');
    const total = values.mm('total');
    const carry = { above: level === 'bust', below: values.word('below') === 'parallel' };
    const front = movableAt(change.garment, 'front', 'side', level);
    const back = movableAt(change.garment, 'back', 'side', level);
    needLevel(front.edges + back.edges, 'side', level);
    // Where one half has no side seam at that level, the other takes the whole.
    const inFront = back.edges === 0 ? 1 : front.edges === 0 ? 0 : values.mm('front');
    const share = { front: inFront, back: 1 - inFront };
    for (const [half, found] of [
      ['front', front],
      ['back', back],
    ] as const) {
      if (found.edges === 0) continue;
      const per = (total * share[half]) / found.edges;
      for (const panel of found.pieces) {
        draw(change, panel.id, (piece) => pullEdges(piece, widenLevel(piece, 'side', level, per, carry)));
      }
    }
  },
  sentence(values, done) {
    const total = values.mm('total');
    const asked = t`Side seams: ${wider(total)} the ${keyWord('level', values.word('level'))} by ${len(Math.abs(total))} all round`;
    const moved = {
      front: done ? movedEdges(done, 'front', 'side') : 0,
      back: done ? movedEdges(done, 'back', 'side') : 0,
    };
    return t`${asked}${perEdge(Math.abs(total), values.mm('front'), moved)}`;
  },
};

/** What each cut edge takes; where front and back take different amounts, those of each. Before anything is done, only the shares. */
function perEdge(total: number, share: number, { front, back }: Record<Half, number>): Phrase {
  const edges = front + back;
  const each = (mm: number, n: number): Phrase =>
    t`${len(mm)} at each of ${countOf(n, t`cut edge`, t`cut edges`)}`;
  if (edges === 0) return share === 0.5 ? t`` : t`, ${percent(share)} of it in front`;
  const inFront = back === 0 ? 1 : front === 0 ? 0 : share;
  if (Math.abs(inFront / front - (1 - inFront) / back) < 1e-9 || inFront === 0 || inFront === 1)
    return t`, ${each(total / edges, edges)}`;
  return t`, ${each((total * inFront) / front, front)} in front and ${each((total * (1 - inFront)) / back, back)} at the back`;
}
