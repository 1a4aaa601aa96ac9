import { sizeRank } from '../words/size-rank.ts';

/** Sizes in numbers are no further apart than this (`104`, `110`, `116`). */
const MOST_STEP = 12;

/** Whether names of sizes, in the order in which they stand, go up or down by equal steps: `34 36 38`, `XL L M`. */
export function isProgression(names: readonly string[]): boolean {
  if (names.length < 2) return false;
  const numbers = names.filter((name) => /^\d+$/.test(name)).length;
  if (numbers !== 0 && numbers !== names.length) return false;
  const ranks = names.map(sizeRank);
  const step = ranks[1]! - ranks[0]!;
  const most = numbers > 0 ? MOST_STEP : 1;
  return (
    Math.abs(step) >= 1 &&
    Math.abs(step) <= most &&
    ranks.every((rank, i) => rank >= 0 && (i === 0 || rank - ranks[i - 1]! === step))
  );
}
