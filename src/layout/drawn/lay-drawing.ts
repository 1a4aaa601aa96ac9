import { arrowHead, length, movePoint, sub } from '../../geometry/index.ts';
import type { Point, Ring } from '../../geometry/index.ts';
import { flatSpots } from '../job/folding.ts';
import { longEdges } from './lay-measures.ts';
import type { Lay, LayJob, Placement } from '../job/lay-job.ts';
import { placedOutline, placementMotion } from '../job/unfold.ts';

/** What a line of the drawn lay is. CUT lines are what a plotter or cutter follows. */
export type LayLayer = 'CUT' | 'GRAIN' | 'FOLD' | 'CLOTH' | 'SELVAGE' | 'FLAW';

export interface LayStroke {
  readonly layer: LayLayer;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** A piece as it lies, for whoever writes on it. */
export interface LyingPiece {
  readonly placement: Placement;
  readonly number: number;
  readonly name: string;
  /** As cut on the table: half of it where it lies on the fold. */
  readonly outline: Ring;
  /** Lower end, upper end. */
  readonly grain: readonly [Point, Point];
}

/** A lay as plain lines in mm, y up, true scale, cut end at x = 0: for the screen, for paper, for a plotter or as DXF strokes. */
export interface LayDrawing {
  readonly width: number;
  readonly height: number;
  readonly strokes: readonly LayStroke[];
  readonly pieces: readonly LyingPiece[];
}

/** An arrow head at the grainline's upper end is this long and half as wide on each side, mm. */
const HEAD_MM = 9;

/** Draws the lay as spread. On-fold pieces show the half that lies on the table. */
export function drawLay(job: LayJob, lay: Lay): LayDrawing {
  const length = lay.spread;
  const strokes: LayStroke[] = clothStrokes(job, lay);
  const line = (layer: LayLayer, points: readonly Point[], closed = false): void => {
    strokes.push({ layer, points, closed });
  };
  const pieces = lay.placements.flatMap((p): LyingPiece[] => {
    const piece = job.pieces.find((c) => c.piece === p.piece);
    if (!piece) return [];
    const motion = placementMotion(p);
    const outline = (p.as === 'on-fold' ? piece.outline : placedOutline(piece, p.as)).map((q) =>
      movePoint(q, motion),
    );
    const grain = [movePoint(piece.grain[0], motion), movePoint(piece.grain[1], motion)] as const;
    line('CUT', outline, true);
    line('GRAIN', grain);
    line('GRAIN', headOf(grain));
    return [{ placement: p, number: piece.number, name: piece.name, outline, grain }];
  });
  return { width: length, height: longEdges(job, lay).across, strokes, pieces };
}

function headOf([from, to]: readonly [Point, Point]): Point[] {
  const way = sub(to, from);
  const long = Math.min(HEAD_MM, length(way) / 2);
  return arrowHead(to, way, long, long / 2);
}

/** Edges of the cloth as spread, its folds, the selvages to be kept clear, flaws. */
function clothStrokes(job: LayJob, lay: Lay): LayStroke[] {
  const edges = longEdges(job, lay);
  const { spread: length } = lay;
  const high = edges.across;
  const run = (layer: LayLayer, ...points: Point[]): LayStroke => ({ layer, points, closed: false });
  const long = (y: number, layer: LayLayer): LayStroke => run(layer, { x: 0, y }, { x: length, y });
  const out: LayStroke[] = [];
  if (job.remnant) {
    // A remnant is drawn as it lies open; folded, only its own outline on the lower layer would be right, and is what shows.
    const low = edges.near === 'fold' ? job.width - high : 0;
    out.push({ layer: 'CLOTH', points: job.remnant.map((p) => ({ x: p.x, y: p.y - low })), closed: true });
    if (edges.near === 'fold') out.push(long(0, 'FOLD'));
  } else {
    out.push(
      run(job.fold === 'crosswise' ? 'FOLD' : 'CLOTH', { x: 0, y: high }, { x: 0, y: 0 }),
      run('CLOTH', { x: length, y: 0 }, { x: length, y: high }),
      long(0, edges.near === 'fold' ? 'FOLD' : 'CLOTH'),
      long(high, edges.far === 'fold' ? 'FOLD' : 'CLOTH'),
    );
  }
  if (edges.near === 'selvage') out.push(long(job.selvage, 'SELVAGE'));
  if (edges.far === 'selvage') out.push(long(high - job.selvage, 'SELVAGE'));
  // Two folds: both selvages meet in the middle of the upper layer.
  if (job.fold === 'double')
    out.push(long(high / 2 - job.selvage, 'SELVAGE'), long(high / 2 + job.selvage, 'SELVAGE'));
  for (const flaw of job.flaws)
    for (const points of flatSpots(job, flaw, lay.folded)) out.push({ layer: 'FLAW', points, closed: true });
  return out;
}
