import { linePath, pathEnd, pathStart } from '../../geometry/index.ts';
import { edgesOf, hasRole } from '../../garment/index.ts';
import type { DrawnPiece, Half } from '../../garment/index.ts';
import { anchorLevels } from '../move/anchor.ts';
import { levelsHeld } from '../move/carry.ts';
import { draw } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { panels, withEdge } from '../role/roles.ts';

/** A centre line leaning by less than this is upright enough to lie on a fold (fold-check.ts). */
const LEAN_MM = 0.05;

/**
 * Brings the leaning end of the centre line back over (or under) its other end, after a wedge: what it was off is added to the neckline (or the hem).
 * Only centre lines on a fold, or all when `always`. Gives the greatest amount moved, positive where cloth was added.
 */
export function uprightCentre(
  change: Change,
  half: Half,
  leaning: 'top' | 'bottom',
  straightens: (piece: DrawnPiece) => boolean,
): number {
  let most = 0;
  for (const panel of withEdge(change.garment, half, 'centre')) {
    // A piece this alteration did not touch leans for another's sake: under a yoke the body's wedge is not the yoke's business.
    if (!change.touched.has(panel.id) || !straightens(panel)) continue;
    draw(change, panel.id, (piece) => {
      const centre = edgesOf(piece, 'centre')[0]!;
      const [a, b] = [pathStart(centre.path), pathEnd(centre.path)];
      const startIsTop = a.y > b.y;
      const leansAtStart = (leaning === 'top') === startIsTop;
      const [end, still] = leansAtStart ? [a, b] : [b, a];
      const off = end.x - still.x;
      if (Math.abs(off) < LEAN_MM) return piece;
      if (Math.abs(off) > Math.abs(most)) most = off;
      const upright = pullEdges(piece, [
        { edge: centre.id, at: leansAtStart ? 0 : 1, by: { x: -off, y: 0 } },
      ]);
      return centre.kind === 'fold' ? ruled(upright, centre.id) : upright;
    });
  }
  return most;
}

/** A fold ruled straight from corner to corner; its levels keep their heights. */
function ruled(piece: DrawnPiece, id: string): DrawnPiece {
  const edges = piece.edges.map((edge) => {
    if (edge.id !== id) return edge;
    const path = linePath(pathStart(edge.path), pathEnd(edge.path));
    return levelsHeld(edge, { ...edge, path });
  });
  return anchorLevels(piece, { ...piece, edges });
}

/** The lower end of a half's side moved out by mm: what was cut off at the centre of the hem is given back there. */
export function giveAtSide(change: Change, half: Half, mm: number): void {
  for (const panel of panels(change.garment, half)) {
    draw(change, panel.id, (piece) => {
      const n = piece.edges.length;
      const pulls = edgesOf(piece, 'hem').flatMap((hem): Pull[] => {
        const i = piece.edges.indexOf(hem);
        return (['start', 'end'] as const).flatMap((end): Pull[] => {
          const beside = piece.edges[end === 'start' ? (i + n - 1) % n : (i + 1) % n]!;
          return hasRole(beside, 'side')
            ? [{ edge: hem.id, at: end === 'start' ? 0 : 1, by: { x: mm, y: 0 } }]
            : [];
        });
      });
      return pullEdges(piece, pulls);
    });
  }
}

/** Whether a piece's centre line is cut on the fold. */
export const onFold = (piece: DrawnPiece): boolean => edgesOf(piece, 'centre').some((e) => e.kind === 'fold');
