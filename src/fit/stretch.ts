import type { ClothNeed, Fabric } from '../garment/index.ts';
import { KNIT_CLASSES, MOST_USEFUL } from './ease-table.ts';

/** Share of its stretch a fabric may use up in wear: as given, at most half (trade notes 3.5, derived). */
export function usefulShare(fabric: Fabric): number {
  return Math.min(fabric.useful ?? MOST_USEFUL, MOST_USEFUL);
}

/**
 * Smallest finished girth that a body can wear in a fabric: F ≥ B / (1 + u s).
 * @param body girth in mm @param stretch share (0.5 = by half) @param useful share of it allowed in wear, at most 0.5
 */
export function smallestGirth(body: number, stretch: number, useful: number): number {
  return body / (1 + Math.min(useful, MOST_USEFUL) * stretch);
}

/** Largest girth an opening of this finished length passes when stretched: F (1 + s). mm */
export function passes(finished: number, stretch: number): number {
  return finished * (1 + stretch);
}

/** How much smaller than the body a close garment of this knit is made, as a share: the textbook class it reaches. */
export function closeReduction(stretch: number): number {
  return KNIT_CLASSES.filter((c) => stretch >= c.stretch - 1e-9).at(-1)?.reduction ?? 0;
}

/**
 * The pattern's own reduction carried over to a fabric: a fabric with less stretch than the pattern asks for is reduced in proportion,
 * one with more is not reduced further.
 * @param own share by which the pattern is smaller than its size chart's body
 */
export function fabricReduction(own: number, cloth: ClothNeed, fabric: Fabric): number {
  if (cloth.kind !== 'knit' || cloth.stretch <= 0 || fabric.stretch === undefined) return own;
  return own * Math.min(1, fabric.stretch / cloth.stretch);
}
