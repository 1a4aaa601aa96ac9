/** Where a coordinate may stand: at + k · step for whole k; step 0 means only at `at`. */
export interface Rail {
  readonly at: number;
  readonly step: number;
}

/** Nearest value on the rail within [low, high], or NaN where it has none there. */
export function onRail(rail: Rail | null, value: number, low: number, high: number): number {
  if (!rail) return value < low ? low : value > high ? high : value;
  if (rail.step <= 0) return rail.at >= low - 1e-9 && rail.at <= high + 1e-9 ? rail.at : NaN;
  const first = Math.ceil((low - rail.at) / rail.step - 1e-9);
  const last = Math.floor((high - rail.at) / rail.step + 1e-9);
  if (last < first) return NaN;
  const k = Math.round((value - rail.at) / rail.step);
  return rail.at + (k < first ? first : k > last ? last : k) * rail.step;
}
