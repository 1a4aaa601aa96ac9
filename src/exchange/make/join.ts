import type { Seam } from '../../garment/index.ts';

/** A plain seam's sides differ by less in every size, mm. */
export const PLAIN_MM = 0.75;
/** Longer by more than this share it is no longer eased in but gathered. */
const GATHERED = 1.1;

/** How two chains are joined of which one is longer by so much in each size: plain, eased or gathered. `shorter`: the other's length. */
export function joinOf(extra: readonly number[], shorter: readonly number[]): Seam['join'] {
  const least = Math.min(...extra);
  const most = Math.max(...extra);
  if (Math.abs(least) <= PLAIN_MM && Math.abs(most) <= PLAIN_MM) return { kind: 'plain' };
  const ratios = ratiosOf(extra, shorter);
  return Math.min(...ratios) > GATHERED ? gathered(extra, shorter) : eased(extra);
}

const ratiosOf = (extra: readonly number[], shorter: readonly number[]): number[] =>
  extra.map((v, k) => 1 + v / shorter[k]!);

/** Eased, as much as the sizes are longer. */
export const eased = (extra: readonly number[]): Seam['join'] => ({
  kind: 'eased',
  least: Math.max(0, floor(Math.min(...extra) - 1, 2)),
  most: Math.max(1, ceil(Math.max(...extra) + 1, 2)),
});

/** Gathered, in the proportion of the sizes. */
export function gathered(extra: readonly number[], shorter: readonly number[]): Seam['join'] {
  const ratios = ratiosOf(extra, shorter);
  return { kind: 'gathered', least: floor(Math.min(...ratios), 100), most: ceil(Math.max(...ratios), 100) };
}

const floor = (v: number, per: number): number => Math.floor(v * per) / per;
const ceil = (v: number, per: number): number => Math.ceil(v * per) / per;
