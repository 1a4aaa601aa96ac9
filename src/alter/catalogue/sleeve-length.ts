import { t, type Phrase, len, listOf } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { cut } from '../follow/change.ts';
import { adjustHeights, extent, levelHeight } from '../role/height.ts';
import { across } from '../role/height.ts';
import { inch, lengthParam, longer } from '../entry/param.ts';
import { needSleeves } from '../role/roles.ts';
import { slidePart } from '../move/slide.ts';

const LIMIT = {
  most: inch(2),
  say: t`Check where the elbow lies before cutting.`,
  source: 'common practice',
};

export const sleeveLength: Alteration = {
  id: 'sleeve-length',
  group: 'length',
  name: t`Sleeve length`,
  when: t`The sleeve ends too high or too low; the elbow fullness should sit at the elbow.`,
  source: 'docs/trade.md 5.2 and 5.12 (half above, half below the elbow; common practice)',
  params: [
    lengthParam('above', t`above the elbow`, { default: 0, min: -100, max: 100, limit: LIMIT }),
    lengthParam('below', t`below the elbow`, { default: 0, min: -150, max: 150, limit: LIMIT }),
  ],
  reach: [t`sleeve lining`, t`cuff and vent keep their size`],
  shows: { on: 'bodice', params: { above: 25, below: 25 } },
  make(change, values) {
    for (const sleeve of needSleeves(change.garment)) {
      const { low } = extent(sleeve);
      const underarm = levelHeight(sleeve, 'bust') ?? 0;
      const elbow = levelHeight(sleeve, 'elbow') ?? (low + underarm) / 2;
      const lines = adjustHeights(sleeve);
      const cutAt = (printed: number | undefined, otherwise: number, amount: number): void => {
        const y = printed ?? otherwise;
        cut(change, sleeve.id, (piece) => {
          const { left, right } = across(piece, y);
          return (p) => slidePart(p, { from: right, to: left, atFrom: amount, atTo: amount });
        });
      };
      // Lower line first: the upper one does not move with it.
      const below = lines.find((y) => y < elbow - 1);
      const above = lines.find((y) => y > elbow + 1 && y < underarm);
      if (values.mm('below') !== 0)
        cutAt(below, (elbow + low) / 2 + Math.max(0, -values.mm('below')) / 2, values.mm('below'));
      if (values.mm('above') !== 0)
        cutAt(above, (elbow + underarm) / 2 + Math.max(0, -values.mm('above')) / 2, values.mm('above'));
    }
  },
  sentence(values) {
    const part = (id: 'above' | 'below'): Phrase =>
      t`${longer(values.mm(id))} ${len(Math.abs(values.mm(id)))} ${id === 'above' ? t`above` : t`below`} the elbow`;
    const parts = (['above', 'below'] as const).filter((id) => values.mm(id) !== 0).map(part);
    return t`Sleeve: ${parts.length > 0 ? listOf(parts) : t`length unchanged`}`;
  },
};
