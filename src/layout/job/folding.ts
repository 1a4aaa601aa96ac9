import { pointsBox, ringsIntersect } from '../../geometry/index.ts';
import type { Point, Ring } from '../../geometry/index.ts';
import { grainAngle } from './cutting-outline.ts';
import type { CuttingPiece, LayJob } from './lay-job.ts';

/** The usable band of the cloth as spread: y from low to high; a fold at either side or not. */
export interface Bands {
  readonly low: number;
  readonly high: number;
  readonly lowFold: boolean;
  readonly highFold: boolean;
  /** Longest the cloth could be, mm: what obstacles are drawn to. */
  readonly length: number;
}

/** How the job's way of folding leaves the cloth on the table. */
export function spreadBands(job: LayJob, folded: number): Bands {
  const { width: w, selvage: s } = job;
  const length = job.most ?? (job.remnant ? pointsBox(job.remnant).maxX : 0);
  switch (job.fold) {
    case 'none':
    case 'crosswise':
      return { low: s, high: w - s, lowFold: false, highFold: false, length };
    case 'lengthwise':
      return { low: 0, high: w / 2 - s, lowFold: true, highFold: false, length };
    case 'partial':
      return { low: folded > 0 ? 0 : s, high: w - folded - s, lowFold: folded > 0, highFold: false, length };
    case 'double':
      return { low: 0, high: w / 2, lowFold: true, highFold: true, length };
  }
}

const heightAcross = (piece: CuttingPiece): number => {
  const a = grainAngle(piece);
  const across = piece.outline.map((p) => p.y * Math.cos(a) - p.x * Math.sin(a));
  return Math.max(...across) - Math.min(...across);
};

/** Width to fold over: just enough for the widest piece on the fold (half drawn), or for the narrowest pair where none is on the fold. */
export function foldedWidth(job: LayJob): number {
  const onFold = job.pieces.filter((p) => p.fold).map(heightAcross);
  const pairs = job.pieces.filter((p) => !p.fold && p.mirrored).map(heightAcross);
  const need = onFold.length ? Math.max(...onFold) : pairs.length ? Math.min(...pairs) : 0;
  return need === 0 ? 0 : Math.min(job.width / 2, Math.ceil(need + job.gap / 2 + job.selvage + 1));
}

/** Flat y of a spread y on the bottom layer: the flat cloth lies with its right side up. */
export function bottomShift(job: LayJob, folded: number): number {
  if (job.fold === 'lengthwise') return job.width / 2;
  if (job.fold === 'double') return job.width / 4;
  return job.fold === 'partial' ? folded : 0;
}

/** The same point on the layer above, on the flat cloth; `high` says the point lies in the upper half of a double fold. */
export function upperPoint(job: LayJob, spread: number, folded: number, high: boolean, p: Point): Point {
  const shift = bottomShift(job, folded);
  // With a nap the cloth is cut along the fold and its upper layer turned round, so that both run the same way.
  if (job.fold === 'crosswise')
    return job.nap === 'one-way' ? { x: p.x, y: job.width - p.y } : { x: spread - p.x, y: p.y };
  return { x: p.x, y: shift + (high ? job.width - p.y : -p.y) };
}

/** Where a spot of the flat cloth shows on the cloth as spread: once on the bottom layer, once for each flap over it. */
export function flatSpots(job: LayJob, spot: Ring, folded: number): Ring[] {
  const shift = bottomShift(job, folded);
  const top = job.fold === 'double' ? job.width / 2 : job.width;
  const far = pointsBox(spot).maxX + 1;
  const sheet: Ring = [
    { x: -1, y: 0 },
    { x: far, y: 0 },
    { x: far, y: top },
    { x: -1, y: top },
  ];
  const seen = [spot.map((p) => ({ x: p.x, y: p.y - shift }))];
  if (shift > 0) seen.push(spot.map((p) => ({ x: p.x, y: shift - p.y })).toReversed());
  if (job.fold === 'double')
    seen.push(spot.map((p) => ({ x: p.x, y: job.width - (p.y - shift) })).toReversed());
  return seen.flatMap((ring) => ringsIntersect([ring], [sheet]));
}
