import { ringArea } from '../geometry/index.ts';
import { openedOutline } from './cutting-outline.ts';
import { checkJob } from './lay-limits.ts';
import type { Lay, LayJob, Placement } from './lay-job.ts';
import type { Spread } from './spread.ts';
import { spreadJob } from './spread.ts';
import { proveLay } from './prove-lay.ts';
import { flatBox } from './flat.ts';
import { readyStepwise, readyStrip } from './ready-strip.ts';
import type { Kept, SavedSearch, StripSearch } from './strip-search.ts';
import { keptFrom, reach, stripSearch } from './strip-search.ts';
import type { StripForms, StripJob } from './strip.ts';
import { stripForms } from './strip.ts';

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
  /**
   * One piece of work of a few milliseconds: first one region of the pieces' fit, until `ready`; then one sweep of the search.
   * `share` is how much of the budget is used (0..1). True when a better arrangement was found.
   */
  readonly step: (share: number) => boolean;
  /** Everything is prepared and the search is on. */
  readonly ready: () => boolean;
  /** The shortest lay so far that `proveLay` finds nothing against; the first is there from the beginning. */
  readonly best: () => Lay | null;
  /** Nothing shorter exists. */
  readonly done: () => boolean;
  readonly save: () => SavedSearch;
  /** The best arrangement in the search's own terms, plain data, to hand to another run of the same job. */
  readonly found: () => Kept | null;
  /** Takes a shorter arrangement found by another run of the same job. */
  readonly adopt: (kept: Kept) => void;
}

/**
 * Begins (or continues) a lay. A first lay, of the pieces' upright boxes, is there at once; what the search needs is prepared step by step.
 * @throws LayImpossible when a piece fits the cloth in none of its turns, with the width that would do.
 */
export function startLay(job: LayJob, from: number | SavedSearch): LayRun {
  const spread = spreadJob(job);
  const forms = stripForms(spread.strip);
  checkJob(job, spread, forms);
  const preparing = readyStepwise(forms);
  let search: StripSearch | null = null;
  let first: Kept | null = typeof from === 'number' ? boxLay(spread.strip, forms) : keptFrom(from.best);
  let proven: Lay | null = null;
  let judged: Kept | null = null;

  const found = (): Kept | null => {
    const own = search?.best() ?? null;
    return own && (!first || own.length < first.length) ? own : first;
  };
  const prepare = (): StripSearch | null => {
    const { done, value } = preparing.next();
    if (done) search = stripSearch(value, from);
    return search;
  };
  return {
    step(share) {
      if (!search) {
        prepare();
        return false;
      }
      const before = found();
      search.step(share);
      // The search makes its own beginning before it can use another's.
      if (first && search.best()) {
        search.adopt(first);
        first = null;
      }
      return found() !== before;
    },
    ready: () => search !== null,
    best() {
      const kept = found();
      if (!kept || kept === judged) return proven;
      judged = kept;
      const lay = layOf(job, spread, forms, kept);
      if ((!proven || lay.length < proven.length) && proveLay(job, lay).length === 0) proven = lay;
      return proven;
    },
    done: () => search !== null && search.done(),
    save() {
      while (!search) prepare();
      return search.save();
    },
    found,
    adopt(kept) {
      if (search?.best()) search.adopt(kept);
      else if (!first || kept.length < first.length) first = kept;
    },
  };
}

/** A lay of upright boxes round the pieces, which needs no more than a moment; null where it finds none (pins that only fit by their outlines). */
function boxLay(job: StripJob, forms: StripForms): Kept | null {
  const boxes = job.shapes.map((shape) => {
    const [x0, y0, x1, y1] = flatBox(shape.outline);
    return { ...shape, outline: Float64Array.from([x0, y0, x1, y0, x1, y1, x0, y1]) };
  });
  const strip = readyStrip({ ...job, shapes: boxes });
  const search = stripSearch(strip, 1);
  search.step(0);
  const kept = search.best();
  if (!kept) return null;
  // Turns that are alike for a box need not be for its piece: the search of boxes knows fewer of them.
  const form = kept.places.form.map((k) => {
    const { shape, turn } = strip.forms[k]!;
    return forms.forms.findIndex((f) => f.shape === shape && f.turn === turn);
  });
  const places = { ...kept.places, form };
  return { places, length: reach(forms, places), overlap: 0 };
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
