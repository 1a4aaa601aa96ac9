import { sideOf, edgesOf } from '../../garment/index.ts';
import type { DrawnPiece, Half } from '../../garment/index.ts';
import { pathEnd, pathStart } from '../../geometry/index.ts';
import { draw } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { dartsAt } from '../dart/dart-intake.ts';
import { trueDart } from '../dart/dart.ts';
import { extent, levelHeight } from '../role/height.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';
import { needPanels } from '../role/roles.ts';
import { slideHalf } from './slide-half.ts';
import { giveAtSide, onFold, uprightCentre } from './upright-centre.ts';

/** Corners of a half's waist edges: each moved by an amount that tapers from the centre to the side over the waist's own width. */
function waistPulls(piece: DrawnPiece, at: (x: number) => number): Pull[] {
  return edgesOf(piece, 'waist').flatMap((edge) => {
    return [
      { edge: edge.id, at: 0, by: { x: 0, y: at(pathStart(edge.path).x) } },
      { edge: edge.id, at: 1, by: { x: 0, y: at(pathEnd(edge.path).x) } },
    ];
  });
}

/**
 * Length added over the front or the seat: `mm` at the centre, nothing at the side (or the other way round for one high hip).
 * A waist seam that is the piece's upper edge is raised, one that is its lower edge is lowered; a piece that runs through the waist opens a wedge there.
 */
export function waistRise(
  change: Change,
  half: Half,
  centre: number,
  side: number,
  only?: 'left' | 'right',
): void {
  const all = needPanels(change.garment, half).filter((p) => !only || sideOf(p) === only);
  const seamed = all.filter((p) => edgesOf(p, 'waist').length > 0);
  if (seamed.length === 0) {
    const line = (piece: DrawnPiece): number | undefined => {
      const y = levelHeight(piece, 'high-hip') ?? levelHeight(piece, 'waist');
      const { low, high } = extent(piece);
      return y !== undefined && y - low > 30 && high - y > 30 ? y : levelHeight(piece, 'waist');
    };
    slideHalf(change, half, { line, centre, side, moves: 'below', ...(only ? { only } : {}) });
    // A wedge swings the centre below it; on a fold that cannot be, so it is made upright and the side gives as much.
    const upright = uprightCentre(change, half, 'bottom', onFold);
    if (upright.most !== 0) giveAtSide(change, half, upright);
    return;
  }
  const xs = (p: DrawnPiece): number[] =>
    edgesOf(p, 'waist').flatMap((e) => [pathStart(e.path).x, pathEnd(e.path).x]);
  const width = (p: DrawnPiece): number => Math.max(...xs(p)) - Math.min(...xs(p));
  const whole = seamed.reduce((sum, p) => sum + width(p), 0);
  if (!(whole > 0)) throw new Refusal('waist-without-width', {});
  let gone = 0;
  for (const panel of seamed) {
    const before = gone;
    gone += width(panel);
    draw(change, panel.id, (piece) => {
      const left = Math.min(...xs(piece));
      const { low, high } = extent(piece);
      const y = pathStart(edgesOf(piece, 'waist')[0]!.path).y;
      const way = y - low > high - y ? 1 : -1;
      const amount = (x: number): number => way * (centre + ((side - centre) * (before + x - left)) / whole);
      const raised = pullEdges(piece, waistPulls(piece, amount));
      return dartsAt(piece, 'waist').reduce(trueDart, raised);
    });
  }
}
