import { movePoint, pointsBox } from '../geometry/index.ts';
import type { Point } from '../geometry/index.ts';
import { longEdges } from './lay-measures.ts';
import type { Lay, LayJob } from './lay-job.ts';
import { placedOutline, placementMotion } from './unfold.ts';

/** What a line of the drawn lay is. CUT lines are what a plotter or cutter follows. */
export type LayLayer = 'CUT' | 'GRAIN' | 'FOLD' | 'CLOTH' | 'FLAW';

export interface LayStroke {
  readonly layer: LayLayer;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

export interface LayLabel {
  readonly at: Point;
  readonly text: string;
  /** Letter height, mm. */
  readonly size: number;
  /** Degrees. */
  readonly turn: number;
}

/** A lay as plain lines and words in mm, y up, true scale: for the screen, for paper, for a plotter or as DXF strokes. */
export interface LayDrawing {
  readonly width: number;
  readonly height: number;
  readonly strokes: readonly LayStroke[];
  readonly labels: readonly LayLabel[];
}

/** Draws the lay as spread. On-fold pieces show the half that lies on the table. */
export function drawLay(job: LayJob, lay: Lay): LayDrawing {
  const edges = longEdges(job, lay);
  const strokes: LayStroke[] = [];
  const labels: LayLabel[] = [];
  const length = lay.spread;
  const line = (layer: LayLayer, points: readonly Point[], closed = false): void => {
    strokes.push({ layer, points, closed });
  };
  if (job.remnant) line('CLOTH', job.remnant, true);
  else {
    line('CLOTH', [
      { x: 0, y: edges.across },
      { x: 0, y: 0 },
    ]);
    line('CLOTH', [
      { x: length, y: 0 },
      { x: length, y: edges.across },
    ]);
    line(edges.near === 'fold' ? 'FOLD' : 'CLOTH', [
      { x: 0, y: 0 },
      { x: length, y: 0 },
    ]);
    line(edges.far === 'fold' ? 'FOLD' : 'CLOTH', [
      { x: 0, y: edges.across },
      { x: length, y: edges.across },
    ]);
  }
  for (const p of lay.placements) {
    const piece = job.pieces.find((c) => c.piece === p.piece);
    if (!piece) continue;
    const motion = placementMotion(p);
    const ring = (p.as === 'on-fold' ? piece.outline : placedOutline(piece, p.as)).map((q) =>
      movePoint(q, motion),
    );
    line('CUT', ring, true);
    const grain = piece.grain.map((q) => movePoint(q, motion));
    line('GRAIN', grain);
    const box = pointsBox(ring);
    const size = Math.max(6, Math.min(24, (box.maxX - box.minX) / 10, (box.maxY - box.minY) / 4));
    labels.push({
      at: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
      text: `${piece.number} ${piece.name}${p.as === 'pair' ? ' (pair)' : p.as === 'on-fold' ? ' (fold)' : ''}`,
      size,
      turn: 0,
    });
  }
  for (const flaw of job.flaws) if (job.fold === 'none') line('FLAW', flaw, true);
  return { width: length, height: edges.across, strokes, labels };
}
