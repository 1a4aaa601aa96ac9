import type { SavedEscapes } from './escape.ts';
import { escapes, NO_ESCAPES } from './escape.ts';
import type { SavedHollows } from './placer.ts';
import { NO_HOLLOWS } from './placer.ts';
import type { Kept, SavedKept, SavedPlaces } from './kept.ts';
import {
  clonePlaces,
  keptFrom,
  leastLength,
  NO_PLACES,
  plainKept,
  plainPlaces,
  reach,
  typedPlaces,
} from './kept.ts';
import { seeded } from './random.ts';
import { CLEAR, copyPlaces, emptyPlaces, separation } from './separation.ts';
import { squeezeOnce } from './squeeze.ts';
import type { Strip } from './strip.ts';

/** Share of the length taken off at the first, easy steps, and at the last of exploring; each refusal takes it down by `SHRINK_DOWN`. */
const SHRINK_MOST = 0.01;
const SHRINK_LEAST = 0.002;
const SHRINK_DOWN = 0.4;
/** In the last part of the time any gain counts: steps fall to `SHRINK_END`. */
const END_FROM = 0.8;
const SHRINK_END = 0.0002;
/** Sweeps without a gain of 2 % (two an item where that is more: a jam of many pieces takes long to pass on) before an attempt counts as stuck, and how often it may be. Giving up sooner cost half a point of density. */
const PATIENCE = 80;
const PATIENCE_PER_ITEM = 2;
const STRIKES = 2;
/** Failed layouts kept to start again from, the least overlapping first. */
const POOL = 24;
/** How often an escape starts from the best itself rather than from a failed attempt. */
const FROM_BEST = 0.5;
/** How far pieces may move in the press, in mean piece sizes: walls are straight lines only so far. Pressing more than once took a third of the time with a hundred pieces. */
const TRUST = 0.2;
/**
 * An attempt with less overlap than this (in mean piece sizes) that has not bettered for `STALL` sweeps is pressed: all pieces at once may find the
 * room that one at a time cannot. Again when a fifth less is left. Up to half of what was solved at all was solved so.
 */
const NEAR_MISS = 0.4;
const STALL = 20;
const LESS_LEFT = 0.8;
/** A pressed layout ends the attempt when it is shorter by this share of what was asked; a hair's breadth is kept, but the attempt goes on. */
const ENOUGH = 0.5;

/** Everything that changes in a search, as plain data: a search continues from it exactly where it stood. */
export interface SavedSearch {
  readonly random: readonly number[];
  readonly length: number;
  readonly places: SavedPlaces;
  readonly weights: readonly number[];
  readonly best: SavedKept | null;
  readonly pool: readonly SavedKept[];
  readonly least: SavedPlaces;
  readonly numbers: Readonly<Progress>;
  readonly escapes: SavedEscapes;
  readonly hollows: SavedHollows;
}
interface Progress {
  leastTotal: number;
  strikeTotal: number;
  since: number;
  strikes: number;
  /** Sweeps of the present attempt. */
  sweeps: number;
  /** Overlap under which the attempt is pressed next. */
  pressBelow: number;
  /** Share of the length taken off next: large while it goes easily. */
  shrink: number;
  /** Share of the budget used, as told last. */
  share: number;
}

export interface StripSearch {
  /** One sweep. `share` (0..1) is how much of the budget is used: in its last fifth small gains are looked for. True when the best grew better. */
  readonly step: (share: number) => boolean;
  readonly best: () => Kept | null;
  /** No shorter layout exists: pins or a single piece fix the length. */
  readonly done: () => boolean;
  /** Takes a better layout found elsewhere; the next attempt starts from it, and what is tried at present is dropped where it could not be shorter. */
  readonly adopt: (kept: Kept) => void;
  readonly save: () => SavedSearch;
}

const fresh = (): Progress => ({
  leastTotal: Infinity,
  strikeTotal: Infinity,
  since: 0,
  strikes: 0,
  sweeps: 0,
  pressBelow: 0,
  shrink: SHRINK_MOST,
  share: 0,
});

/** A search of this seed that has not made its first step, as it would be saved; `best` is what is known already. */
export const unbegun = (seed: number, best: Kept | null): SavedSearch => ({
  random: seeded(seed).state(),
  length: 0,
  places: NO_PLACES,
  weights: [],
  best: best && plainKept(best),
  pool: [],
  least: NO_PLACES,
  numbers: fresh(),
  escapes: NO_ESCAPES,
  hollows: NO_HOLLOWS,
});

export function stripSearch(strip: Strip, from: number | SavedSearch): StripSearch {
  const saved = typeof from === 'number' ? null : from;
  const sep = separation(strip, saved ? saved.random : seeded(from as number).state(), saved?.hollows);
  const { random } = sep;
  const n = strip.itemShape.length;
  const bound = leastLength(strip);
  const patience = Math.max(PATIENCE, PATIENCE_PER_ITEM * n);
  let best: Kept | null = null;
  let pool: Kept[] = [];
  const least = emptyPlaces(n);
  const aside = emptyPlaces(n);
  let now = fresh();
  const out = escapes(strip, sep, random, saved ? saved.escapes : NO_ESCAPES);

  if (saved) {
    copyPlaces(typedPlaces(saved.places), sep.places);
    if (saved.length > 0) sep.start(saved.length);
    copyPlaces(typedPlaces(saved.places), sep.places);
    sep.weights.set(saved.weights);
    sep.refresh();
    best = keptFrom(saved.best);
    pool = saved.pool.map((k) => keptFrom(k)!);
    copyPlaces(typedPlaces(saved.least), least);
    now = { ...saved.numbers };
  }

  function begin(length: number): void {
    sep.start(Math.min(strip.most, length));
    now.leastTotal = Infinity;
    now.strikeTotal = Infinity;
    now.since = 0;
    now.strikes = 0;
    now.sweeps = 0;
    now.pressBelow = strip.scale * NEAR_MISS;
  }

  /** One piece after another, large ones first, each to a free place in the strip so far or at its end: a lay in the first moment. */
  function first(): void {
    const far = 1e3 * (bound + strip.width);
    strip.itemShape.forEach((_, i) => {
      sep.places.form[i] = strip.itemForms[i]![0]!;
      sep.places.x[i] = strip.pinned[i]?.x ?? far;
      sep.places.y[i] = strip.pinned[i]?.y ?? 0;
    });
    const order = strip.itemShape
      .map((_, i) => i)
      .filter((i) => !strip.pinned[i])
      .sort((a, b) => strip.area[strip.itemShape[b]!]! - strip.area[strip.itemShape[a]!]! || a - b);
    let length = bound;
    for (const i of order) {
      let widest = 0;
      for (const f of strip.itemForms[i]!)
        widest = Math.max(widest, strip.forms[f]!.box[2] - strip.forms[f]!.box[0]);
      let seated = false;
      // Stripes may want up to a repeat more than the piece itself; flaws may spoil some places at the end.
      for (let k = 0; k < 24 && !seated; k++) {
        seated = sep.seat(i, Math.min(length, strip.most));
        if (!seated && length < strip.most) length += widest * (k < 4 ? 0.35 : 1);
        else if (!seated) break;
      }
      if (!seated) sep.scatter(i);
    }
    sep.start(Math.min(length, strip.most));
    if (sep.total() > 0) return begin(length);
    best = { places: clonePlaces(sep.places), length: reach(strip, sep.places), overlap: 0 };
    press();
    shorten();
  }

  /** Presses the layout in `sep` to the shortest its arrangement allows within `TRUST`; keeps it when free and better than the best. */
  function press(): boolean {
    const to = squeezeOnce(strip, sep.places, sep.length(), TRUST * strip.scale, strip.scale * CLEAR * 1.2);
    if (!(to === to) || (best && to > best.length)) return false;
    sep.refresh();
    if (sep.total() > 0) return false;
    const real = reach(strip, sep.places);
    const gain = (best ? best.length : Infinity) - real;
    if (gain <= strip.scale * 1e-5 || real > strip.most) return false;
    best = { places: clonePlaces(sep.places), length: real, overlap: 0 };
    return true;
  }

  /** Share of the length that the next attempt takes off. */
  function shrink(): number {
    const k = (now.share - END_FROM) / (1 - END_FROM);
    return k > 0 ? Math.min(now.shrink, SHRINK_LEAST * Math.pow(SHRINK_END / SHRINK_LEAST, k)) : now.shrink;
  }

  /** From the best, shorter by a share: all that is right of a random cut moves left by the difference, so that the jam begins anywhere along the strip. */
  function shorten(): void {
    copyPlaces(best!.places, sep.places);
    const to = Math.max(bound, best!.length * (1 - shrink()));
    const cut = random.next() * to;
    for (let i = 0; i < n; i++) {
      if (strip.pinned[i]) continue;
      const form = strip.forms[sep.places.form[i]!]!;
      if (!form.railX && sep.places.x[i]! + (form.box[0] + form.box[2]) / 2 > cut)
        sep.places.x[i] = sep.places.x[i]! - (best!.length - to);
    }
    begin(to);
  }

  function failed(): void {
    out.tell(false, now.sweeps);
    pool.push({ places: clonePlaces(least), length: sep.length(), overlap: now.leastTotal });
    pool.sort((a, b) => a.overlap - b.overlap);
    if (pool.length > POOL) pool.pop();
    if (now.shrink > SHRINK_LEAST) {
      now.shrink = Math.max(SHRINK_LEAST, now.shrink * SHRINK_DOWN);
      return shorten();
    }
    if (random.next() < FROM_BEST) shorten();
    else {
      // Half-normal pick: good ones often, poor ones sometimes.
      const g = Math.abs(Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next()));
      const pick = pool[Math.min(pool.length - 1, Math.floor(g * 0.25 * pool.length))]!;
      copyPlaces(pick.places, sep.places);
      begin(Math.max(bound, best!.length * (1 - shrink())));
    }
    out.take();
    begin(sep.length());
  }

  function improved(): true {
    out.tell(true, now.sweeps);
    pool = [];
    shorten();
    return true;
  }

  /** Presses the least overlapping layout of the attempt; true when it came out short enough to end the attempt. Else all stands as before. */
  function pressLeast(): boolean {
    const had = best!.length;
    copyPlaces(sep.places, aside);
    copyPlaces(least, sep.places);
    if (press() && had - best!.length >= ENOUGH * (had - sep.length())) return true;
    copyPlaces(aside, sep.places);
    sep.refresh();
    return false;
  }

  function step(share: number): boolean {
    if (n === 0) return false;
    now.share = share;
    if (sep.length() === 0) {
      first();
      return best !== null;
    }
    const had = best;
    const total = sep.total() === 0 ? 0 : sep.sweep();
    now.sweeps++;
    if (total === 0) {
      const length = reach(strip, sep.places);
      if (!best || length < best.length) best = { places: clonePlaces(sep.places), length, overlap: 0 };
      press();
      return improved();
    }
    if (total < now.leastTotal * 0.98) now.since = 0;
    else now.since++;
    if (total < now.leastTotal) {
      now.leastTotal = total;
      copyPlaces(sep.places, least);
    }
    sep.reweigh();
    if (best && now.since === STALL && now.leastTotal < now.pressBelow) {
      now.pressBelow = now.leastTotal * LESS_LEFT;
      if (pressLeast()) return improved();
    }
    if (now.since <= patience) return best !== had;
    now.since = 0;
    now.strikes = now.leastTotal < now.strikeTotal * 0.98 ? 1 : now.strikes + 1;
    now.strikeTotal = Math.min(now.strikeTotal, now.leastTotal);
    if (now.strikes < STRIKES) {
      copyPlaces(least, sep.places);
      sep.refresh();
    } else if (best) failed();
    else begin(sep.length() * 1.08);
    return best !== had;
  }

  function adopt(kept: Kept): void {
    if (best && kept.length >= best.length) return;
    best = { ...kept, places: clonePlaces(kept.places) };
    // An attempt at less than the new best still is worth its end, but not one at far less: a try at that would come later.
    if (sep.length() < kept.length && sep.length() >= kept.length * (1 - now.shrink)) return;
    pool = [];
    shorten();
  }

  return {
    step,
    best: () => best,
    done: () => best !== null && best.length <= bound * (1 + 1e-9),
    adopt,
    save: () => ({
      random: random.state(),
      length: sep.length(),
      places: plainPlaces(sep.places),
      weights: [...sep.weights],
      best: best && plainKept(best),
      pool: pool.map(plainKept),
      least: plainPlaces(least),
      numbers: { ...now },
      escapes: out.save(),
      hollows: sep.saveHollows(),
    }),
  };
}
