import type { PlanChoices } from '../garment/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';

/** A size: its index in the chart, a whole number, or between two sizes with method `part`. */
export interface CutSize {
  readonly index: number;
  /** How it was found: on a size, between two (with their indices), or beyond the chart's ends. */
  readonly how: 'exact' | 'between' | 'below' | 'above' | 'nearest';
  readonly between?: readonly [number, number];
}

/** Index of the value nearest to `target`; among equals the one nearest to `prefer`. */
function nearest(row: readonly number[], target: number, prefer: number): number {
  let best = 0;
  for (let i = 1; i < row.length; i++) {
    const gain = Math.abs(row[best]! - target) - Math.abs(row[i]! - target);
    if (gain > 1e-6 || (Math.abs(gain) <= 1e-6 && Math.abs(i - prefer) < Math.abs(best - prefer))) best = i;
  }
  return best;
}

/** Where between two neighbouring sizes the row reaches `target`; null beyond both ends. */
function crossing(row: readonly number[], target: number): { low: number; share: number } | null {
  for (let i = 0; i + 1 < row.length; i++) {
    const [a, b] = [row[i]!, row[i + 1]!];
    if (b > a && target >= a && target <= b) return { low: i, share: (target - a) / (b - a) };
  }
  return null;
}

/**
 * The size at which a row of girths (one per size, smallest first) meets a target.
 * Within 3 mm of a size (the tolerance of a finished measure) it is that size. Between two: the smaller by default (common practice),
 * the larger (as a 1922 bulletin taught) or the nearest (halfway, the smaller) by setting; with `part`, the fraction between them.
 * @param prefer index taken among sizes that are equal here
 */
export function cutSize(
  row: readonly number[],
  target: number,
  choices: Pick<PlanChoices, 'between' | 'method'>,
  prefer = 0,
): CutSize {
  const near = nearest(row, target, prefer);
  const cross = crossing(row, target);
  if (choices.method === 'part' && cross !== null) {
    const index = cross.low + cross.share;
    return Number.isInteger(index)
      ? { index, how: 'exact' }
      : { index, how: 'between', between: [cross.low, cross.low + 1] };
  }
  if (Math.abs(row[near]! - target) <= FINISHED_MM) return { index: near, how: 'exact' };
  const lower = row.flatMap((v, i) => (v < target ? [i] : []));
  const upper = row.flatMap((v, i) => (v > target ? [i] : []));
  if (lower.length === 0) return { index: near, how: 'below' };
  if (upper.length === 0) return { index: near, how: 'above' };
  const small = nearest(row, Math.max(...lower.map((i) => row[i]!)), prefer);
  const large = nearest(row, Math.min(...upper.map((i) => row[i]!)), prefer);
  const pair: readonly [number, number] = [small, large];
  if (choices.between === 'nearest') {
    // Halfway belongs to the smaller.
    const half = row[large]! - target < target - row[small]! - 1e-6;
    return { index: half ? large : small, how: 'between', between: pair };
  }
  return { index: choices.between === 'larger' ? large : small, how: 'between', between: pair };
}

/** A row's value at a size index, straight between two sizes. */
export function atIndex(row: readonly number[], index: number): number {
  const low = Math.min(row.length - 1, Math.max(0, Math.floor(index)));
  const high = Math.min(row.length - 1, low + 1);
  return row[low]! + (index - low) * (row[high]! - row[low]!);
}
