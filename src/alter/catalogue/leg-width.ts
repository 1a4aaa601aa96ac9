import { t, len, edgesOf, type DrawnPiece, type Phrase } from '../../garment/index.ts';
import { pathAt, shareAtPlace } from '../../geometry/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { draw } from '../follow/change.ts';
import { choiceParam, inch, lengthParam, wider } from '../entry/param.ts';
import { atHeight } from '../move/crossing.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { levelHeight, levelShare } from '../role/height.ts';
import { needTrousers } from '../ways/trousers.ts';
import { widenLevel } from '../ways/widen-level.ts';
import { Refusal } from '../words/refusal.ts';

/** What lies this near to the height of the crotch point is on it, mm. */
const SAME_MM = 1;

/**
 * The thigh: an edge of the leg moved by `mm` at the height of the crotch point and at the thigh line alike, so that both are as much wider; nothing at the next level
 * above, and below at the knee, unless it is carried on to the hem.
 */
function thighPulls(piece: DrawnPiece, role: 'side' | 'inseam', mm: number, below: boolean): Pull[] {
  const y = levelHeight(piece, 'crotch');
  if (y === undefined) return [];
  return edgesOf(piece, role).flatMap((edge): Pull[] => {
    const hit = atHeight(edge.path, y)[0];
    const at = levelShare(piece, edge, 'crotch') ?? (hit && shareAtPlace(edge.path, hit.place));
    if (at === undefined) return [];
    const out = { x: mm, y: 0 };
    const others = [0, 1, ...edge.crossings.map((c) => c.at)].filter((s) => Math.abs(s - at) > 1e-6);
    const thigh = edge.crossings.find((c) => c.level === 'thigh')?.at;
    return [at, ...others].map((s): Pull => {
      const whole = s === at || s === thigh || (below && pathAt(edge.path, s).y < y - SAME_MM);
      return { edge: edge.id, at: s, by: whole ? out : { x: 0, y: 0 }, smooth: s > 0 && s < 1 };
    });
  });
}

export const legWidth: Alteration = {
  id: 'leg-width',
  group: 'trousers',
  name: t`Leg width`,
  when: t`The leg is too tight or too wide at thigh, knee or hem.`,
  source: 'docs/trade.md 5.0 (quarter rule on the four edges of a leg; derived)',
  params: [
    choiceParam('level', t`level`, [
      { id: 'hem', name: t`hem` },
      { id: 'knee', name: t`knee` },
      { id: 'crotch', name: t`thigh` },
    ]),
    lengthParam('amount', t`round each leg`, {
      default: inch(1),
      min: -120,
      max: 160,
      limit: {
        most: inch(2),
        say: t`More than ${len(inch(1 / 2))} at each edge moves the crease: slash instead.`,
        source: 'docs/trade.md 5.0',
      },
    }),
    choiceParam('below', t`below that level`, [
      { id: 'taper', name: t`taper to nothing` },
      { id: 'parallel', name: t`carry on to the hem` },
    ]),
  ],
  reach: [t`inside and outside leg, front and back, a quarter each`, t`lining`],
  shows: { on: 'trousers', params: { level: 'hem', amount: 120 } },
  make(change, values) {
    const quarter = values.mm('amount') / 4;
    const level = values.word('level');
    const carry = { below: values.word('below') === 'parallel' };
    let met = 0;
    for (const leg of needTrousers(change.garment)) {
      draw(change, leg.id, (piece) => {
        const moved = (role: 'side' | 'inseam', mm: number): Pull[] =>
          level === 'crotch'
            ? thighPulls(piece, role, mm, carry.below)
            : widenLevel(piece, role, level, mm, carry);
        const pulls = [...moved('side', quarter), ...moved('inseam', -quarter)];
        met += pulls.length;
        return pullEdges(piece, pulls);
      });
    }
    if (met === 0) throw new Refusal('no-level', { on: { role: 'leg' }, level }, { level });
  },
  sentence(values) {
    const names: Readonly<Record<string, Phrase>> = { hem: t`hem`, knee: t`knee`, crotch: t`thigh` };
    const name = names[values.word('level')] ?? t``;
    const mm = values.mm('amount');
    return t`Trousers: ${wider(mm)} each leg by ${len(Math.abs(mm))} at the ${name}, a quarter at each seam edge`;
  },
};
