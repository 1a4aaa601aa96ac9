import { ringArea } from '../../geometry/index.ts';
import { boxArrangement } from '../search/box-arrangement.ts';
import { openedOutline } from '../job/cutting-outline.ts';
import { checkJob } from './lay-limits.ts';
import type { Lay, LayJob, Placement } from '../job/lay-job.ts';
import type { Spread } from './spread.ts';
import { spreadJob } from './spread.ts';
import { proveLay } from './prove-lay.ts';
import type { CrewOptions, Hand } from '../search/crew.ts';
import { crew } from '../search/crew.ts';
import type { Kept } from '../search/kept.ts';
import { keptFrom } from '../search/kept.ts';
import type { SavedSearch } from '../search/strip-search.ts';
import type { StripRun } from '../search/strip-run.ts';
import { startStrip } from '../search/strip-run.ts';
import type { StripForms } from '../search/strip.ts';
import { stripForms } from '../search/strip.ts';

/** When to stop. `sweeps` gives the same lay on every machine; seconds need a clock (milliseconds, any origin). */
export type LayBudget =
  { readonly sweeps: number } | { readonly seconds: number; readonly now: () => number };

export interface LayOptions {
  readonly seed: number;
  readonly budget: LayBudget;
  /** Continue a lay saved earlier, of the same job. */
  readonly from?: SavedSearch;
}

/** A lay in the making: step it, read the best so far at any time, save it, go on later. Steps and the rest as in a run of its strip. */
export interface LayRun extends StripRun {
  /** The shortest lay so far that `proveLay` finds nothing against; the first is there from the beginning. */
  readonly best: () => Lay | null;
}

/**
 * Begins (or continues) a lay.
 * @throws LayImpossible when a piece fits the cloth in none of its turns, with the width that would do.
 */
export function startLay(job: LayJob, from: number | SavedSearch): LayRun {
  const spread = spreadJob(job);
  const forms = stripForms(spread.strip);
  checkJob(job, spread, forms);
  const run = startStrip(spread.strip, from, typeof from === 'number' ? boxArrangement(forms) : null);
  const judge = laysOf(job, spread, forms);
  return { ...run, best: () => judge(run.found()) };
}

/** Turns what a search finds into lays of the job, and gives out the shortest that is proven. */
function laysOf(job: LayJob, spread: Spread, forms: StripForms): (kept: Kept | null) => Lay | null {
  let proven: Lay | null = null;
  let judged: Kept | null = null;
  return (kept) => {
    if (!kept || kept === judged) return proven;
    judged = kept;
    const lay = layOf(job, spread, forms, kept);
    if ((!proven || lay.length < proven.length) && proveLay(job, lay).length === 0) proven = lay;
    return proven;
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
  let last = before;
  const { budget } = options;
  while (!run.ready()) run.step(0);
  const began = 'now' in budget ? budget.now() : 0;
  for (let k = 0; !run.done(); k++) {
    const share = 'now' in budget ? (budget.now() - began) / (budget.seconds * 1000) : k / budget.sweeps;
    if (share >= 1) break;
    const better = run.step(share) ? run.best() : null;
    if (!better || better === last) continue;
    last = better;
    yield better;
  }
  return run.save();
}

/** The best lay within the budget, or null where none was found. */
export function layBest(job: LayJob, options: LayOptions): Lay | null {
  let best: Lay | null = null;
  for (const better of lay(job, options)) best = better;
  return best;
}

/**
 * As `lay`, with several hands (workers) at once: see `crew`. The first lay is told before any of them has begun to work.
 * @throws LayImpossible as `startLay` does; what the last hand died of.
 */
export async function* layTogether(
  job: LayJob,
  options: Omit<CrewOptions, 'known'>,
  hands: readonly Hand[],
): AsyncGenerator<Lay, SavedSearch, void> {
  const spread = spreadJob(job);
  const forms = stripForms(spread.strip);
  let working: AsyncGenerator<Kept, SavedSearch, void> | null = null;
  try {
    checkJob(job, spread, forms);
    const judge = laysOf(job, spread, forms);
    const known = keptFrom(options.from?.best ?? null) ?? boxArrangement(forms);
    let last = judge(known);
    if (last) yield last;
    working = crew(spread.strip, { ...options, known }, hands);
    for (;;) {
      const { done, value } = await working.next();
      if (done) return value;
      const better = judge(value);
      if (!better || better === last) continue;
      last = better;
      yield better;
    }
  } finally {
    if (working) await working.return(undefined as never);
    else hands.forEach((h) => h.close());
  }
}

function layOf(job: LayJob, spread: Spread, strip: StripForms, kept: Kept): Lay {
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
