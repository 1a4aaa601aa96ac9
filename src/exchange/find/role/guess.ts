import { CONTOURS } from './contour-table.ts';
import type { Contour } from './contour-table.ts';
import { lay, match } from './match.ts';
import type { Guess } from './match.ts';
import { POSES } from './pose.ts';
import type { Pose } from './pose.ts';
import type { RunPiece } from './run.ts';
import { signCost } from './sign-cost.ts';

/** So many of the best ways to see a piece are kept for the whole to choose from. */
const KEPT = 14;
/** A way so much dearer than the best of its kind is no longer looked at. */
const HOPELESS = 14;
/** An outline of more runs is no garment piece that this table knows. */
const MOST_RUNS = 30;
/** What it costs to see nothing known in a piece, and for each of its runs. */
const UNKNOWN = 3;
const UNKNOWN_RUN = 1.5;
/** Drawn upside down or lying is rarer than upright; a drawn grainline makes lying rarer still. */
const UPSIDE_DOWN = 1.6;
const LYING = 2.5;
const LYING_BAND = 0.1;
const OVER = 0.3;

/** Another's word on a piece, as a cost for a contour: what is printed on it, what a person said. Infinity forbids. */
export type Said = (contour: Contour | null) => number;

/** The best ways to see a piece that are allowed, the likeliest first; the last is always that nothing is known of it. */
export function guesses(piece: RunPiece, said: Said, allowed: (guess: Guess) => boolean): Guess[] {
  const found: Guess[] = [];
  const nothing: Guess = {
    contour: null,
    pose: POSES[0]!,
    slots: piece.runs.map(() => null),
    cost: UNKNOWN + UNKNOWN_RUN * piece.runs.length + said(null),
  };
  let least = nothing.cost;
  if (piece.runs.length <= MOST_RUNS)
    for (const pose of POSES) {
      const laid = lay(piece, pose);
      for (const contour of CONTOURS) {
        const aside = said(contour) + poseCost(contour, pose);
        const own = aside < least + HOPELESS ? match(laid, contour, least + HOPELESS - aside) : null;
        if (!own || !allowed(own)) continue;
        const cost = own.cost + aside + signCost(piece, own);
        found.push({ ...own, cost });
        least = Math.min(least, cost);
      }
    }
  const sorted = distinct(found.toSorted((a, b) => a.cost - b.cost));
  return [...sorted.filter((one) => one.cost < least + HOPELESS).slice(0, KEPT), nothing];
}

function poseCost({ band }: Contour, { over, quarter }: Pose): number {
  if (band) return (over ? OVER : 0) + (quarter % 2 === 1 ? LYING_BAND : 0);
  return (over ? OVER : 0) + (quarter === 0 ? 0 : quarter === 2 ? UPSIDE_DOWN : LYING);
}

/** One of each meaning: the same roles on the same edges, however the piece lies. */
function distinct(sorted: readonly Guess[]): Guess[] {
  const known = new Set<string>();
  return sorted.filter((guess) => {
    const key = [
      guess.contour!.role,
      guess.contour!.half,
      ...guess.slots.map((slot) => `${slot?.role ?? ''}${slot?.half ?? ''}`),
    ].join();
    if (known.has(key)) return false;
    known.add(key);
    return true;
  });
}
