import { ringArea } from '../geometry/index.ts';
import { openedOutline } from './cutting-outline.ts';
import { checkJob } from './lay-limits.ts';
import type { Lay, LayJob, Placement } from './lay-job.ts';
import type { Spread } from './spread.ts';
import { spreadJob } from './spread.ts';
import { proveLay } from './prove-lay.ts';
import type { Kept, SavedSearch, StripSearch } from './strip-search.ts';
import { stripSearch } from './strip-search.ts';
import type { Strip } from './strip.ts';
import { readyStrip } from './strip.ts';

/** When to stop. `sweeps` gives the same lay on every machine; seconds need a clock (milliseconds, any origin). */
export type LayBudget =
  { readonly sweeps: number } | { readonly seconds: number; readonly now: () => number };

export interface LayOptions {
  readonly seed: number;
  readonly budget: LayBudget;
  /** Continue a lay saved earlier, of the same job. */
  readonly from?: SavedSearch;
}

/** A lay in the making: step it, read the best so far at any time, save it, go on later. */
export interface LayRun {
  /** One sweep; `share` of the budget used (0..1). True when the best grew better. */
  readonly step: (share: number) => boolean;
  /** The shortest lay so far that `proveLay` finds nothing against. */
  readonly best: () => Lay | null;
  /** Nothing shorter exists. */
  readonly done: () => boolean;
  readonly save: () => SavedSearch;
  /** For workers that share their bests. */
  readonly search: StripSearch;
  readonly strip: Strip;
}

/**
 * Begins (or continues) a lay.
 * @throws LayImpossible when a piece fits the cloth in none of its turns, with the width that would do.
 */
export function startLay(job: LayJob, from: number | SavedSearch): LayRun {
  const spread = spreadJob(job);
  const strip = readyStrip(spread.strip);
  checkJob(job, spread, strip);
  const search = stripSearch(strip, from);
  let proven: Lay | null = null;
  /** Takes the search's best if the independent proof finds nothing against it. */
  const prove = (): boolean => {
    const kept = search.best();
    const found = kept && layOf(job, spread, strip, kept);
    if (!found || proveLay(job, found).length > 0) return false;
    proven = found;
    return true;
  };
  prove();
  return {
    step: (share) => search.step(share) && prove(),
    best: () => proven,
    done: () => proven !== null && search.done(),
    save: search.save,
    search,
    strip,
  };
}

/**
 * Lays out one cloth: yields each better lay as it is found, the first within moments. Stop by leaving the loop; what was yielded stays.
 * Returns the saved search, to continue from. Deterministic for a seed under a budget of sweeps.
 */
export function* lay(job: LayJob, options: LayOptions): Generator<Lay, SavedSearch, void> {
  const run = startLay(job, options.from ?? options.seed);
  const before = run.best();
  if (before) yield before;
  const { budget } = options;
  const began = 'now' in budget ? budget.now() : 0;
  for (let k = 0; !run.done(); k++) {
    const share = 'now' in budget ? (budget.now() - began) / (budget.seconds * 1000) : k / budget.sweeps;
    if (share >= 1) break;
    if (run.step(share)) yield run.best()!;
  }
  return run.save();
}

/** The best lay within the budget, or null where none was found. */
export function layBest(job: LayJob, options: LayOptions): Lay | null {
  let best: Lay | null = null;
  for (const better of lay(job, options)) best = better;
  return best;
}

function layOf(job: LayJob, spread: Spread, strip: Strip, kept: Kept): Lay {
  const placements: Placement[] = [];
  const seen = new Map<number, number>();
  let area = 0;
  let far = 0;
  strip.itemShape.forEach((s, i) => {
    const shape = spread.shapes[s];
    if (!shape) return;
    const nth = seen.get(s) ?? 0;
    seen.set(s, nth + 1);
    const form = strip.forms[kept.places.form[i]!]!;
    const turn = spread.strip.shapes[s]!.turns[form.turn]!;
    const x = kept.places.x[i]! + spread.dx;
    const y = kept.places.y[i]! + spread.dy;
    placements.push({
      piece: shape.piece.piece,
      copy: shape.firstCopy + nth,
      x,
      y,
      rotation: turn.angle,
      mirrored: turn.mirrored === true,
      as: shape.as,
    });
    const outline = shape.as === 'opened' ? openedOutline(shape.piece) : shape.piece.outline;
    area += ringArea(outline) * (shape.as === 'pair' || shape.as === 'on-fold' ? 2 : 1);
    const c = Math.cos((turn.angle * Math.PI) / 180);
    const sn = Math.sin((turn.angle * Math.PI) / 180);
    for (const p of outline) far = Math.max(far, x + (turn.mirrored ? -p.x : p.x) * c - p.y * sn);
  });
  // A napped crosswise lay is cut along its fold: the gap there is halved between its two layers.
  if (job.fold === 'crosswise' && job.nap === 'one-way') far += job.gap / 2;
  // Its halves then lie bar on bar only when the cut falls on a bar.
  const bar = job.repeat?.along;
  if (job.fold === 'crosswise' && job.nap === 'one-way' && bar) far = Math.ceil(far / bar - 1e-9) * bar;
  const length = far * spread.lengths;
  return {
    cloth: job.cloth,
    width: job.width,
    fold: job.fold,
    spread: far,
    length,
    density: length > 0 ? area / (job.width * length) : 0,
    folded: spread.folded,
    placements,
  };
}
