import type { Phrase } from '../../garment/index.ts';
import { movePoint } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { Lay, LayJob } from '../job/lay-job.ts';
import { placementMotion } from '../job/unfold.ts';
import { grainWords } from '../words/lay-words.ts';

/** Where one end of a grainline stands on the cloth as spread: what a sewist checks with a tape before pinning. */
export interface GrainEnd {
  readonly piece: string;
  readonly copy: number;
  readonly end: 'upper' | 'lower';
  readonly at: Point;
  /** mm from the cut end of the cloth, or from the crosswise fold. */
  readonly fromEnd: number;
  /** mm from the edge named: the nearer of the spread cloth's two long edges. */
  readonly fromEdge: number;
  readonly edge: 'selvage' | 'fold';
  /** What `fromEnd` is measured from. */
  readonly from: 'cut end' | 'fold';
}

/** The long edges of the cloth as spread: what lies at y = 0 and at the far side, and how far away that is. */
export function longEdges(
  job: LayJob,
  lay: Lay,
): { near: 'selvage' | 'fold'; far: 'selvage' | 'fold'; across: number } {
  switch (job.fold) {
    case 'lengthwise':
      return { near: 'fold', far: 'selvage', across: job.width / 2 };
    case 'double':
      return { near: 'fold', far: 'fold', across: job.width / 2 };
    case 'partial':
      return { near: lay.folded > 0 ? 'fold' : 'selvage', far: 'selvage', across: job.width - lay.folded };
    case 'none':
    case 'crosswise':
      return { near: 'selvage', far: 'selvage', across: job.width };
  }
}

/** Both ends of every grainline with their distances. A grainline along the cloth shows the same `fromEdge` at both ends. */
export function layMeasures(job: LayJob, lay: Lay): GrainEnd[] {
  const edges = longEdges(job, lay);
  return lay.placements.flatMap((p) => {
    const piece = job.pieces.find((c) => c.piece === p.piece);
    if (!piece) return [];
    const ends = piece.grain.map((q) => movePoint(q, placementMotion(p)));
    const middle = (ends[0]!.y + ends[1]!.y) / 2;
    const far = edges.across - middle < middle;
    return ends.map((at, k): GrainEnd => ({
      piece: p.piece,
      copy: p.copy,
      end: k === 0 ? 'lower' : 'upper',
      at,
      fromEnd: at.x,
      fromEdge: far ? edges.across - at.y : at.y,
      edge: far ? edges.far : edges.near,
      from: job.fold === 'crosswise' ? 'fold' : 'cut end',
    }));
  });
}

/** The two measures of one grainline in words: along the cloth both its ends stand equally far from the edge. */
export function measureWords(ends: readonly GrainEnd[]): readonly Phrase[] {
  const [a, b] = ends.toSorted((x, y) => x.fromEnd - y.fromEnd);
  return a && b ? grainWords(a.fromEdge, a.edge, [a.fromEnd, b.fromEnd], a.from) : [];
}
