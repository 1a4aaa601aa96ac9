import type { DrawnPiece, Garment, Half } from '../../garment/index.ts';
import { pathStart } from '../../geometry/index.ts';
import { Refusal } from '../words/refusal.ts';
import { edgesOf, hasEdge } from '../../garment/index.ts';
import { withEdge } from '../role/roles.ts';

/** A fold leaves this much of the piece on either side of itself. */
const LEAVE_MM = 5;

/**
 * Height of the across-chest line of a half: midway down the armhole of the panel that reaches the shoulder. Only panels that reach the shoulder are
 * cut there, so that a side panel that ends in the armhole keeps its panel seam. Where the part above is folded down by `fold` mm, and a corner (a deep neck's) would be swallowed, the line
 * lies as much lower, above the underarm.
 */
export function chestLine(garment: Garment, half: Half, fold = 0): (piece: DrawnPiece) => number | undefined {
  const top = withEdge(garment, half, 'armhole').filter((p) => hasEdge(p, 'shoulder'));
  const heights = top.flatMap((p) => edgesOf(p, 'armhole').flatMap((e) => e.path.map((q) => q.y)));
  if (heights.length === 0) throw new Refusal('no-shoulder', { role: 'shoulder', on: { half } });
  const low = Math.min(...heights);
  const middle = (low + Math.max(...heights)) / 2;
  const corners = top.flatMap((p) => p.edges.map((e) => pathStart(e.path).y));
  const next = Math.min(...corners.filter((c) => c > middle));
  const y = fold > 0 ? Math.max(low + LEAVE_MM, Math.min(middle, next - fold - LEAVE_MM)) : middle;
  return (piece) => (hasEdge(piece, 'shoulder') ? y : undefined);
}
