import type { DrawnPiece, Garment, Half } from '../../garment/index.ts';
import { Refusal } from '../words/refusal.ts';
import { edgesOf, hasEdge } from '../../garment/index.ts';
import { withEdge } from '../role/roles.ts';

/**
 * Height of the across-chest line of a half: midway down the armhole of the panel that reaches the shoulder. Only panels that reach the shoulder are
 * cut there, so that a side panel that ends in the armhole keeps its panel seam.
 */
export function chestLine(garment: Garment, half: Half): (piece: DrawnPiece) => number | undefined {
  const top = withEdge(garment, half, 'armhole').filter((p) => hasEdge(p, 'shoulder'));
  const heights = top.flatMap((p) => edgesOf(p, 'armhole').flatMap((e) => e.path.map((q) => q.y)));
  if (heights.length === 0) throw new Refusal('no-shoulder', { role: 'shoulder', on: { half } });
  const y = (Math.min(...heights) + Math.max(...heights)) / 2;
  return (piece) => (hasEdge(piece, 'shoulder') ? y : undefined);
}
