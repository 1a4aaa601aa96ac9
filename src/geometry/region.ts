import { Clipper, FillRule } from 'clipper2-ts';
import type { Path64, Paths64 } from 'clipper2-ts';
import type { Ring } from './types.ts';

/**
 * Regions on a whole-number grid of 0.1 µm: a hundred times finer than what is stored, and coarse enough that every product the
 * clipper forms stays an exact float64 integer up to 9 m (the library's own default is two decimals, too coarse for us).
 */
const UNITS_PER_MM = 1e4;

const there = (rings: readonly Ring[]): Paths64 =>
  rings.map((ring) =>
    ring.map((p) => ({ x: Math.round(p.x * UNITS_PER_MM), y: Math.round(p.y * UNITS_PER_MM) })),
  );
const back = (paths: readonly Path64[]): Ring[] =>
  paths.map((path) => path.map((p) => ({ x: p.x / UNITS_PER_MM, y: p.y / UNITS_PER_MM })));

/** Everything inside any of the rings (non-zero winding). Outer borders come back counter-clockwise, holes clockwise. */
export const ringsUnion = (a: readonly Ring[], b: readonly Ring[] = []): Ring[] =>
  back(Clipper.union(there(a), there(b), FillRule.NonZero));

/** What is inside both regions. */
export const ringsIntersect = (a: readonly Ring[], b: readonly Ring[]): Ring[] =>
  back(Clipper.intersect(there(a), there(b), FillRule.NonZero));

/** What is inside the first region and not inside the second. */
export const ringsDifference = (a: readonly Ring[], b: readonly Ring[]): Ring[] =>
  back(Clipper.difference(there(a), there(b), FillRule.NonZero));

/** What a self-crossing ring winds round counter-clockwise: loops that turn the other way are dropped. Holes come back clockwise. */
export const ringsFilled = (ring: Ring): Ring[] => back(Clipper.union(there([ring]), [], FillRule.Positive));
