import type { PlanChoices } from '../garment/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';

/** A size: its index in the chart, a whole number, or between two sizes with method `part`; and how it was found. */
export type CutSize = { readonly index: number } & (
  | { readonly how: 'exact' | 'below' | 'above' }
  /** So near to a size that it is that size: `off` over it (under, when negative), mm. */
  | { readonly how: 'near'; readonly off: number }
  /** Between two sizes, by their indices. */
  | { readonly how: 'between'; readonly between: readonly [number, number] }
);

/** How a size is found: which of two is taken, and up to how far off a measure still is a size, by the step to the next (mm). */
export interface HowCut {
  readonly take: 'smaller' | 'larger' | 'nearest';
  readonly method: PlanChoices['method'];
  readonly near: (step: number) => number;
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

/** From a size to the next that differs, on the target's side where there is one, mm. */
function stepFrom(row: readonly number[], size: number, target: number): number {
  const at = row[size]!;
  const beyond = (up: boolean): number =>
    Math.min(...row.filter((v) => (up ? v > at : v < at)).map((v) => Math.abs(v - at)));
  const step = beyond(target > at);
  return Number.isFinite(step) ? step : beyond(target <= at);
}

/**
 * The size at which a row of girths (one per size, smallest first) meets a target. Within 3 mm of a size (the tolerance of a finished measure)
 * it is that size, and so it is as far off as `how.near` says. Between two: the smaller, the larger or the nearest (halfway, the smaller), as
 * `how.take` says; with method `part`, the fraction between them.
 * @param prefer index taken among sizes that are equal here
 */
export function cutSize(row: readonly number[], target: number, how: HowCut, prefer = 0): CutSize {
  const near = nearest(row, target, prefer);
  const cross = crossing(row, target);
  if (how.method === 'part' && cross !== null) {
    const index = cross.low + cross.share;
    return Number.isInteger(index)
      ? { index, how: 'exact' }
      : { index, how: 'between', between: [cross.low, cross.low + 1] };
  }
  const off = target - row[near]!;
  if (Math.abs(off) <= FINISHED_MM) return { index: near, how: 'exact' };
  // A hair of tolerance: 1/4 in typed in cm must still be 1/4 in.
  if (Math.abs(off) <= how.near(stepFrom(row, near, target)) + 1e-6) return { index: near, how: 'near', off };
  const lower = row.flatMap((v, i) => (v < target ? [i] : []));
  const upper = row.flatMap((v, i) => (v > target ? [i] : []));
  if (lower.length === 0) return { index: near, how: 'below' };
  if (upper.length === 0) return { index: near, how: 'above' };
  const small = nearest(row, Math.max(...lower.map((i) => row[i]!)), prefer);
  const large = nearest(row, Math.min(...upper.map((i) => row[i]!)), prefer);
  const nearer = row[large]! - target < target - row[small]! - 1e-6 ? large : small;
  const index = how.take === 'nearest' ? nearer : how.take === 'larger' ? large : small;
  return { index, how: 'between', between: [small, large] };
}

/** A row's value at a size index, straight between two sizes. */
export function atIndex(row: readonly number[], index: number): number {
  const low = Math.min(row.length - 1, Math.max(0, Math.floor(index)));
  const high = Math.min(row.length - 1, low + 1);
  return row[low]! + (index - low) * (row[high]! - row[low]!);
}

/** Where a value lies along a row, in sizes; the end beyond its ends. */
export const indexAlong = (row: readonly number[], value: number): number =>
  cutSize(row, value, { take: 'nearest', method: 'part', near: () => 0 }).index;
