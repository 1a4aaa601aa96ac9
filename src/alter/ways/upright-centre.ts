import { linePath, pathAt, pathEnd, pathLength, pathStart } from '../../geometry/index.ts';
import { edgesOf, hasRole } from '../../garment/index.ts';
import type { DrawnPiece, Edge, Half, Level } from '../../garment/index.ts';
import { anchorLevels } from '../move/anchor.ts';
import { levelsHeld } from '../move/carry.ts';
import { draw } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { panels, withEdge } from '../role/roles.ts';

/** A centre line leaning by less than this is upright enough to lie on a fold (fold-check.ts). */
const LEAN_MM = 0.05;

/** What a wedge made the centre lean, by level; the corner at the leaning end is under its own level. mm, away from the upright. */
type Lean = ReadonlyMap<Level, number>;

export interface Upright {
  /** The greatest amount moved; positive where cloth was added at the top. 0: nothing leaned. */
  readonly most: number;
  readonly lean: Lean;
}

/**
 * Brings the leaning end of the centre line back over (or under) its other end, after a wedge: what it was off is added to the neckline (or the hem).
 * Below a wedge the centre keeps its length (above one the neckline keeps its height), and what it was off at every level is told, so that the side can give as much there.
 */
export function uprightCentre(
  change: Change,
  half: Half,
  leaning: 'top' | 'bottom',
  straightens: (piece: DrawnPiece) => boolean,
): Upright {
  let most = 0;
  const lean = new Map<Level, number>();
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
      const offs = centre.crossings.map((c) => ({ ...c, off: pathAt(centre.path, c.at).x - still.x }));
      for (const c of offs) lean.set(c.level, c.off);
      // A hem below the hip may go with the hip's level: what leaned at the hip itself stands.
      const corner = leansAtStart ? centre.from : cornerAfter(piece, centre);
      if (!offs.some((c) => c.level === corner)) lean.set(corner, off);
      const longer = leaning === 'top' ? 0 : pathLength(centre.path) - Math.abs(end.y - still.y);
      const upright = pullEdges(piece, [
        { edge: centre.id, at: leansAtStart ? 0 : 1, by: { x: -off, y: end.y > still.y ? longer : -longer } },
        ...(centre.kind === 'fold'
          ? []
          : offs.map((c) => ({ edge: centre.id, at: c.at, by: { x: -c.off, y: 0 }, smooth: true }))),
      ]);
      return centre.kind === 'fold' ? ruled(upright, centre.id) : upright;
    });
  }
  return { most, lean };
}

const cornerAfter = (piece: DrawnPiece, edge: Edge<'one'>): Level =>
  piece.edges[(piece.edges.indexOf(edge) + 1) % piece.edges.length]!.from;

/** A fold ruled straight from corner to corner; its levels keep their heights. */
function ruled(piece: DrawnPiece, id: string): DrawnPiece {
  const edges = piece.edges.map((edge) => {
    if (edge.id !== id) return edge;
    const path = linePath(pathStart(edge.path), pathEnd(edge.path));
    return levelsHeld(edge, { ...edge, path });
  });
  return anchorLevels(piece, { ...piece, edges });
}

/** The side of a half moved by what was cut off or added at the centre, at every level as much as there: no width changes. */
export function giveAtSide(change: Change, half: Half, { most, lean }: Upright): void {
  for (const panel of panels(change.garment, half)) {
    draw(change, panel.id, (piece) => {
      const n = piece.edges.length;
      const pulls = edgesOf(piece, 'side').flatMap((side): Pull[] => {
        const i = piece.edges.indexOf(side);
        const corner = (at: 0 | 1): Pull[] => {
          const beside = piece.edges[(i + (at === 0 ? n - 1 : 1)) % n]!;
          return hasRole(beside, 'hem') ? [{ edge: side.id, at, by: { x: -most, y: 0 } }] : [];
        };
        const inner = side.crossings.flatMap((c): Pull[] =>
          lean.has(c.level)
            ? [{ edge: side.id, at: c.at, by: { x: -lean.get(c.level)!, y: 0 }, smooth: true }]
            : [],
        );
        return [...corner(0), ...inner, ...corner(1)];
      });
      return pullEdges(piece, pulls);
    });
  }
}

/** Whether a piece's centre line is cut on the fold. */
export const onFold = (piece: DrawnPiece): boolean => edgesOf(piece, 'centre').some((e) => e.kind === 'fold');
