import { sideOf, t, len, listOf, edgesOf } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { draw } from '../follow/change.ts';
import { choiceParam, inch, lengthParam } from '../entry/param.ts';
import { partSides } from '../follow/part-sides.ts';
import { pullEdges } from '../move/pull.ts';
import { needPanels } from '../role/roles.ts';
import { waistRise } from '../ways/waist-rise.ts';
import { levelShare } from '../role/height.ts';
import { widenLevel } from '../ways/widen-level.ts';

export const highHip: Alteration = {
  id: 'high-hip',
  group: 'sides and balance',
  name: t`One hip higher`,
  when: t`The waist line tilts and the skirt hangs to one side.`,
  source: 'docs/trade.md 5.13 (memory)',
  params: [
    choiceParam('side', t`higher side`, [
      { id: 'left', name: t`left` },
      { id: 'right', name: t`right` },
    ]),
    lengthParam('amount', t`raised at the side seam`, {
      default: inch(0.5),
      min: -30,
      max: 40,
      limit: {
        most: inch(1),
        say: t`Between ${len(inch(1 / 4))} and ${len(inch(1))} is usual.`,
        source: 'docs/trade.md 5.13',
      },
    }),
    lengthParam('width', t`wider at that hip, both edges together`, { default: 0, min: -30, max: 50 }),
  ],
  reach: [
    t`front and back of that side only: left and right become pieces of their own`,
    t`waistband and lining of that side`,
  ],
  shows: { on: 'skirt', params: { side: 'left', amount: 22, width: 0 } },
  make(change, values) {
    const side = values.word('side') === 'left' ? 'left' : 'right';
    partSides(
      change,
      [...needPanels(change.garment, 'front'), ...needPanels(change.garment, 'back')].map((p) => p.id),
    );
    for (const half of ['front', 'back'] as const) {
      waistRise(change, half, 0, values.mm('amount'), side);
      const width = values.mm('width');
      if (width === 0) continue;
      for (const panel of needPanels(change.garment, half).filter((p) => sideOf(p) === side)) {
        const level = ['hip', 'high-hip'].find((l) =>
          edgesOf(panel, 'side').some((e) => levelShare(panel, e, l) !== undefined),
        );
        if (level)
          draw(change, panel.id, (piece) =>
            pullEdges(piece, widenLevel(piece, 'side', level, width / 2, { below: true })),
          );
      }
    }
  },
  sentence(values) {
    const [mm, width] = [values.mm('amount'), values.mm('width')];
    const side = values.word('side') === 'left' ? t`Left` : t`Right`;
    const parts = [
      ...(mm === 0 && width !== 0
        ? []
        : [
            t`waist ${mm < 0 ? t`lowered` : t`raised`} by ${len(Math.abs(mm))} at the side seam, nothing at the centre`,
          ]),
      ...(width === 0 ? [] : [t`hip ${width < 0 ? t`narrower` : t`wider`} by ${len(Math.abs(width))}`]),
    ];
    return t`${side} side: ${listOf(parts)}; left and right cut singly`;
  },
};
