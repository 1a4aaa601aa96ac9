import { say } from '../../garment/index.ts';
import type { DrawnPiece, Garment } from '../../garment/index.ts';
import type { Alteration } from '../alteration.ts';
import { edgesOf, hasEdge } from '../edge-role.ts';
import { inch, lengthParam, longer } from '../param.ts';
import { Refusal } from '../refusal.ts';
import { withEdge } from '../roles.ts';
import type { Half } from '../roles.ts';
import { slideHalf } from '../slide-half.ts';

/**
 * Height of the across-chest line of a half: midway down the armhole of the panel that reaches the shoulder. Only panels that reach the shoulder are
 * cut there, so that a side panel that ends in the armhole keeps its panel seam.
 */
function chestLine(garment: Garment, half: Half): (piece: DrawnPiece) => number | undefined {
  const top = withEdge(garment, half, 'armhole').filter((p) => hasEdge(p, 'shoulder'));
  const heights = top.flatMap((p) => edgesOf(p, 'armhole').flatMap((e) => e.path.map((q) => q.y)));
  if (heights.length === 0)
    throw new Refusal('no-shoulder', `No shoulder seam was found on the ${half} of this pattern.`);
  const y = (Math.min(...heights) + Math.max(...heights)) / 2;
  return (piece) => (hasEdge(piece, 'shoulder') ? y : undefined);
}

export const chestLength: Alteration = {
  id: 'chest-length',
  group: 'length',
  name: 'Length above the bust line',
  when: 'Only the part above the armhole line is too long or too short: neck and shoulders stand off, or the armhole cuts in.',
  source: 'docs/trade.md 5.2 (across the chest, midway between shoulder and underarm; common practice)',
  params: [
    lengthParam('amount', 'front and back', {
      default: 0,
      min: -40,
      max: 40,
      limit: {
        most: inch(0.75),
        say: 'The armhole grows or shrinks by the same amount on both halves.',
        source: 'common practice',
      },
    }),
  ],
  reach: ['front and back', 'sleeve cap: as much higher or lower', 'facings, panel seams, linings'],
  shows: { on: 'bodice', params: { amount: 20 } },
  make(change, values) {
    const amount = values.mm('amount');
    for (const half of ['front', 'back'] as const) {
      slideHalf(change, half, {
        line: chestLine(change.garment, half),
        centre: amount,
        side: amount,
        moves: 'above',
      });
    }
  },
  sentence: (values) =>
    `Front and back: ${longer(values.mm('amount'))} ${say(Math.abs(values.mm('amount')))} across the chest, armhole and sleeve cap with it`,
};
