import { flatBox } from './flat.ts';
import { readyStepwise, readyStrip } from './ready-strip.ts';
import type { Kept } from './kept.ts';
import { keptFrom, plainKept, reach } from './kept.ts';
import type { SavedSearch, StripSearch } from './strip-search.ts';
import { stripSearch, unbegun } from './strip-search.ts';
import type { StripForms, StripJob } from './strip.ts';
import { stripForms } from './strip.ts';

/** A search in the making, from the first moment on: step it, read what it found, hand it what others found. */
export interface StripRun {
  /**
   * One piece of work of a few milliseconds: first one region of the shapes' fit, until `ready`; then one sweep of the search.
   * `share` is how much of the budget is used (0..1). True when a shorter arrangement was found.
   */
  readonly step: (share: number) => boolean;
  /** Everything is prepared and the search is on. */
  readonly ready: () => boolean;
  /** The shortest arrangement so far; the first is there from the beginning. Plain data, fit to be sent to another thread. */
  readonly found: () => Kept | null;
  /** Takes a shorter arrangement found by another run of the same job. */
  readonly adopt: (kept: Kept) => void;
  /** Nothing shorter exists. */
  readonly done: () => boolean;
  readonly save: () => SavedSearch;
  readonly forms: StripForms;
}

/** Begins or continues: a first arrangement by the shapes' upright boxes at once, then the search, prepared step by step. */
export function startStrip(job: StripJob, from: number | SavedSearch): StripRun {
  const forms = stripForms(job);
  const preparing = readyStepwise(forms);
  let search: StripSearch | null = null;
  let given: Kept | null = typeof from === 'number' ? boxLay(job, forms) : keptFrom(from.best);

  const found = (): Kept | null => {
    const own = search?.best() ?? null;
    return own && (!given || own.length < given.length) ? own : given;
  };
  return {
    forms,
    step(share) {
      if (!search) {
        const { done, value } = preparing.next();
        if (done) search = stripSearch(value, from);
        return false;
      }
      const before = found();
      search.step(share);
      // The search makes its own beginning before it can use another's.
      if (given && search.best()) {
        search.adopt(given);
        given = null;
      }
      return found() !== before;
    },
    ready: () => search !== null,
    found,
    adopt(kept) {
      if (search?.best()) search.adopt(kept);
      else if (!given || kept.length < given.length) given = kept;
    },
    done: () => search !== null && search.done(),
    save() {
      // Stopped while it still prepares, it need not end that first.
      if (!search)
        return typeof from === 'number' ? unbegun(from, given) : { ...from, best: given && plainKept(given) };
      if (given && search.best()) search.adopt(given);
      const saved = search.save();
      // A search that has not made its own beginning yet still keeps what it was given.
      return saved.best || !given ? saved : { ...saved, best: plainKept(given) };
    },
  };
}

/** An arrangement of upright boxes round the shapes, which needs no more than a moment; null where it finds none (pins that only fit by their outlines). */
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
  // Turns that are alike for a box need not be for its shape: the search of boxes knows fewer of them.
  const form = kept.places.form.map((k) => {
    const { shape, turn } = strip.forms[k]!;
    return forms.forms.findIndex((f) => f.shape === shape && f.turn === turn);
  });
  const places = { ...kept.places, form };
  return { places, length: reach(forms, places), overlap: 0 };
}
