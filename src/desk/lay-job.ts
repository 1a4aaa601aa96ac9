import type { Cloth, Finding, Garment, LaySettings } from '../garment/index.ts';
import {
  cuttingPieces,
  garmentMatches,
  jobFor,
  stripeFindings,
  type ClothChoice,
  type LayJob,
  type Repeat,
} from '../layout/index.ts';

/** Stripes as the settings say; none: null. */
function repeatOf(s: LaySettings): Repeat | null {
  if (s.repeatAlong <= 0 && s.repeatAcross <= 0) return null;
  return {
    ...(s.repeatAlong > 0 ? { along: s.repeatAlong } : {}),
    ...(s.repeatAcross > 0 ? { across: s.repeatAcross } : {}),
  };
}

/** What the shop arithmetic asks of a cloth: how it shrinks, what it costs. */
export const offerOf = (
  s: LaySettings,
): Pick<ClothChoice, 'shrinkLength' | 'shrinkWidth' | 'price' | 'per'> => ({
  shrinkLength: s.shrinkLength,
  shrinkWidth: s.shrinkWidth,
  per: s.pricePer,
  ...(s.price > 0 ? { price: s.price } : {}),
});

/** One cloth as the settings say, for laying and for buying: at its own width and fold unless others are to be tried. */
export function clothChoice(garment: Garment, cloth: Cloth, s: LaySettings): ClothChoice {
  const repeat = repeatOf(s);
  return {
    cloth,
    widths: [s.width],
    folds: [s.fold],
    nap: s.nap,
    gap: s.gap,
    selvage: s.selvage,
    ...(repeat ? { repeat, matches: garmentMatches(garment) } : {}),
    ...offerOf(s),
  };
}

/**
 * The lay that the settings ask for, and where stripes cannot meet: the one that every face begins. The cloth is laid washed, narrower by what
 * it shrinks; round spoilt places and pinned pieces, on a remnant where there is one.
 */
export function layJob(
  garment: Garment,
  cloth: Cloth,
  s: LaySettings,
): { readonly job: LayJob; readonly findings: readonly Finding[] } {
  const pieces = cuttingPieces(garment, cloth);
  const choice = clothChoice(garment, cloth, s);
  const job: LayJob = {
    ...jobFor(pieces, choice, s.width, s.fold),
    flaws: s.spoilt.map(({ fromEnd: x, fromEdge: y, long, high }) => [
      { x, y },
      { x: x + long, y },
      { x: x + long, y: y + high },
      { x, y: y + high },
    ]),
    pins: s.pins,
    ...(s.remnant.length >= 3 ? { remnant: s.remnant } : {}),
  };
  return { job, findings: stripeFindings(pieces, choice) };
}
