import { readyStepwise } from './ready-strip.ts';
import type { Kept } from './kept.ts';
import { keptFrom, plainKept } from './kept.ts';
import type { SavedSearch, StripSearch } from './strip-search.ts';
import { stripSearch, unbegun } from './strip-search.ts';
import type { StripJob } from './strip.ts';
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
  /** The shortest arrangement so far, what was known included; null before there is any. Plain data, fit to be sent to another thread. */
  readonly found: () => Kept | null;
  /** Takes a shorter arrangement found by another run of the same job. */
  readonly adopt: (kept: Kept) => void;
  /** Nothing shorter exists. */
  readonly done: () => boolean;
  readonly save: () => SavedSearch;
}

/** Begins or continues: the search is prepared step by step. `known` is a first arrangement to go on from (see `boxArrangement`), or none. */
export function startStrip(job: StripJob, from: number | SavedSearch, known: Kept | null): StripRun {
  const preparing = readyStepwise(stripForms(job));
  let search: StripSearch | null = null;
  let given = typeof from === 'number' ? known : (keptFrom(from.best) ?? known);

  const found = (): Kept | null => {
    const own = search?.best() ?? null;
    return own && (!given || own.length < given.length) ? own : given;
  };
  return {
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
