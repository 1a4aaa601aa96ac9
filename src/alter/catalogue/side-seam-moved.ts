import { chainEdges, t, type Phrase, len } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { inch, lengthParam } from '../entry/param.ts';
import { moveStrip, needSeams } from '../ways/seam-strip.ts';
import { pathAt } from '../../geometry/index.ts';

const LIMIT = {
  most: inch(0.75),
  say: t`Compare front and back width with the body before moving it further.`,
  source: 'common practice',
};

export const sideSeamMoved: Alteration = {
  id: 'side-seam-moved',
  group: 'sides and balance',
  name: t`Side seam moved`,
  when: t`The side seam swings to the front or the back although the width all round is right.`,
  source: 'docs/trade.md 5.6 (derived)',
  params: [
    lengthParam('top', t`towards the front at the top`, {
      default: inch(0.25),
      min: -30,
      max: 30,
      limit: LIMIT,
    }),
    lengthParam('bottom', t`towards the front at the bottom`, {
      default: inch(0.25),
      min: -40,
      max: 40,
      limit: LIMIT,
    }),
  ],
  reach: [
    t`what leaves the one piece joins the other; the width all round stays`,
    t`linings, pockets`,
    t`sleeve underarm point`,
    t`waistband notch`,
  ],
  shows: { on: 'skirt', params: { top: 8, bottom: 30 } },
  make(change, values) {
    for (const found of needSeams(change.garment, 'side')) {
      const first = found.front[0]!;
      const last = found.front[found.front.length - 1]!;
      const y = (ref: typeof first, end: 0 | 1): number => {
        const { edge } = chainEdges(change.garment, [ref])[0]!;
        return pathAt(edge.path, ref.backwards ? 1 - end : end).y;
      };
      const up = y(last, 1) > y(first, 0);
      const widths = [values.mm('bottom'), values.mm('top')];
      const [start, end] = up ? widths : widths.toReversed();
      moveStrip(change, found, [
        { at: 0, width: start! },
        { at: 1, width: end! },
      ]);
    }
  },
  sentence(values) {
    const way = (mm: number): Phrase =>
      mm === 0 ? t`nothing` : t`${len(Math.abs(mm))} to the ${mm < 0 ? t`back` : t`front`}`;
    return t`Side seam: moved ${way(values.mm('top'))} at the top, ${way(values.mm('bottom'))} at the bottom`;
  },
};
