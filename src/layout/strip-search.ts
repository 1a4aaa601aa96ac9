import { escape, ESCAPES } from './escape.ts';
import type { Places } from './place-kernel.ts';
import { seeded } from './random.ts';
import type { Weighing } from './separation.ts';
import { CLEAR, copyPlaces, emptyPlaces, separation } from './separation.ts';
import { squeezeOnce } from './squeeze.ts';
import type { Strip, StripForms } from './strip.ts';

/** A layout with its length. `overlap` is 0 for one that may be cut. */
export interface Kept {
  readonly places: Places;
  readonly length: number;
  readonly overlap: number;
}

/** Share of the length taken off at the first, easy steps, and at the last of exploring; each refusal takes it down by `SHRINK_DOWN`. */
const SHRINK_MOST = 0.01;
const SHRINK_LEAST = 0.002;
const SHRINK_DOWN = 0.4;
/** Sweeps without a gain of 2 % (two an item where that is more: a jam of many pieces takes long to pass on) before an attempt counts as stuck, and how often it may be. Giving up sooner cost half a point of density. */
const PATIENCE = 80;
const PATIENCE_PER_ITEM = 2;
const STRIKES = 2;
/** The last fifth of the time compresses the best instead of looking for another arrangement: steps from `MOST` down to `LEAST`. From the half on: trousers − 0.7, swim − 0.8, albano − 0.3, shirts perhaps + 0.5. */
const COMPRESS_FROM = 0.8;
const COMPRESS_MOST = 0.002;
const COMPRESS_LEAST = 0.0001;
const COMPRESS_PATIENCE = 40;
const COMPRESS_STRIKES = 1;
/** Failed layouts kept to start again from, the least overlapping first. */
const POOL = 24;
/** How often an escape starts from the best itself rather than from a failed attempt. */
const FROM_BEST = 0.3;
/** How far pieces may move in the press, in mean piece sizes: walls are straight lines only so far. Pressing more than once took a third of the time with a hundred pieces. */
const TRUST = 0.2;
/** An attempt that gives up with less overlap than this (in mean piece sizes) is pressed all the same. Five times as much cost more than it brought. */
const NEAR_MISS = 0.1;

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
  readonly gains: readonly number[];
}
interface SavedPlaces {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly form: readonly number[];
}
interface SavedKept {
  readonly places: SavedPlaces;
  readonly length: number;
  readonly overlap: number;
}
interface Progress {
  leastTotal: number;
  strikeTotal: number;
  since: number;
  strikes: number;
  compressing: number;
  escape: number;
  /** Share of the length taken off next: large while it goes easily. */
  shrink: number;
}

export interface StripSearch {
  /** One sweep. `share` (0..1) is how much of the budget is used: its last fifth compresses. True when the best grew better. */
  readonly step: (share: number) => boolean;
  readonly best: () => Kept | null;
  /** No shorter layout exists: pins or a single piece fix the length. */
  readonly done: () => boolean;
  /** Takes a better layout found elsewhere; the next attempt starts from it, and what is tried at present is dropped where it could not be shorter. */
  readonly adopt: (kept: Kept) => void;
  readonly save: () => SavedSearch;
}

const clone = (p: Places): Places => ({ x: p.x.slice(), y: p.y.slice(), form: p.form.slice() });
const plainPlaces = (p: Places): SavedPlaces => ({ x: [...p.x], y: [...p.y], form: [...p.form] });
const typedPlaces = (p: SavedPlaces): Places => ({
  x: Float64Array.from(p.x),
  y: Float64Array.from(p.y),
  form: Int32Array.from(p.form),
});

/** A layout as it is saved. */
export const plainKept = (kept: Kept): SavedKept => ({ ...kept, places: plainPlaces(kept.places) });

/** A saved layout in the search's own terms. */
export const keptFrom = (saved: SavedKept | null): Kept | null =>
  saved && { ...saved, places: typedPlaces(saved.places) };

/** Length a layout reaches. */
export function reach(strip: StripForms, places: Places): number {
  let most = 0;
  for (let i = 0; i < strip.itemShape.length; i++) {
    if (!strip.obstacle[i]) most = Math.max(most, places.x[i]! + strip.forms[places.form[i]!]!.box[2]);
  }
  return most;
}

/** No layout is shorter: area, the widest piece, the pins. */
export function leastLength(strip: StripForms): number {
  let least = strip.total / strip.width;
  strip.itemShape.forEach((_, i) => {
    if (strip.obstacle[i]) return;
    const pin = strip.pinned[i];
    if (pin) least = Math.max(least, pin.x + strip.forms[strip.itemForms[i]![0]!]!.box[2]);
    else
      least = Math.max(
        least,
        Math.min(...strip.itemForms[i]!.map((f) => strip.forms[f]!.box[2] - strip.forms[f]!.box[0])),
      );
  });
  return least;
}

const fresh = (): Progress => ({
  leastTotal: Infinity,
  strikeTotal: Infinity,
  since: 0,
  strikes: 0,
  compressing: 0,
  escape: -1,
  shrink: SHRINK_MOST,
});

/** A search of this seed that has not made its first step, as it would be saved; `best` is what is known already. */
export function unbegun(seed: number, best: Kept | null): SavedSearch {
  const none: SavedPlaces = { x: [], y: [], form: [] };
  return {
    random: seeded(seed).state(),
    length: 0,
    places: none,
    weights: [],
    best: best && plainKept(best),
    pool: [],
    least: none,
    numbers: fresh(),
    gains: ESCAPES.map(() => 1),
  };
}

export function stripSearch(
  strip: Strip,
  from: number | SavedSearch,
  weighing: Weighing = 'root',
): StripSearch {
  const saved = typeof from === 'number' ? null : from;
  const random = seeded(saved ? saved.random : (from as number));
  const sep = separation(strip, random, weighing);
  const n = strip.itemShape.length;
  const bound = leastLength(strip);
  const patience = Math.max(PATIENCE, PATIENCE_PER_ITEM * n);
  let best: Kept | null = null;
  let pool: Kept[] = [];
  const least = emptyPlaces(n);
  let now = fresh();
  // What each escape has gained lately: successes count most, near misses a little.
  const gains = new Float64Array(ESCAPES.length).fill(1);

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
    gains.set(saved.gains);
  }

  function begin(length: number): void {
    sep.start(Math.min(strip.most, length));
    now.leastTotal = Infinity;
    now.strikeTotal = Infinity;
    now.since = 0;
    now.strikes = 0;
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
    best = { places: clone(sep.places), length: reach(strip, sep.places), overlap: 0 };
    press();
    nextExplore();
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
    best = { places: clone(sep.places), length: real, overlap: 0 };
    return true;
  }

  /** From the best, shorter by a share: all that is right of a random cut moves left by the difference, so that the jam begins anywhere along the strip. */
  function shorten(share: number): void {
    copyPlaces(best!.places, sep.places);
    const to = Math.max(bound, best!.length * (1 - share));
    const cut = random.next() * to;
    for (let i = 0; i < n; i++) {
      if (strip.pinned[i]) continue;
      const form = strip.forms[sep.places.form[i]!]!;
      if (!form.railX && sep.places.x[i]! + (form.box[0] + form.box[2]) / 2 > cut)
        sep.places.x[i] = sep.places.x[i]! - (best!.length - to);
    }
    begin(to);
  }

  function nextExplore(): void {
    now.escape = -1;
    shorten(now.shrink);
  }

  function nextCompress(share: number): void {
    const k = Math.min(1, Math.max(0, (share - COMPRESS_FROM) / (1 - COMPRESS_FROM)));
    shorten(COMPRESS_MOST * Math.pow(COMPRESS_LEAST / COMPRESS_MOST, k));
  }

  function failed(): void {
    const length = sep.length();
    if (now.escape >= 0)
      gains[now.escape] = gains[now.escape]! * 0.9 + 0.1 * Math.min(1, (strip.scale * 0.05) / now.leastTotal);
    pool.push({ places: clone(least), length, overlap: now.leastTotal });
    pool.sort((a, b) => a.overlap - b.overlap);
    if (pool.length > POOL) pool.pop();
    // Half-normal pick: good ones often, poor ones sometimes.
    const g = Math.abs(Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next()));
    const pick =
      best && random.next() < FROM_BEST
        ? best
        : pool[Math.min(pool.length - 1, Math.floor(g * 0.25 * pool.length))]!;
    copyPlaces(pick.places, sep.places);
    let sum = 0;
    for (const v of gains) sum += v + 0.1;
    let at = random.next() * sum;
    now.escape = 0;
    while (now.escape < ESCAPES.length - 1 && at >= gains[now.escape]! + 0.1)
      at -= gains[now.escape++]! + 0.1;
    escape(strip, sep, random, ESCAPES[now.escape]!);
    begin(length);
  }

  function improved(share: number): true {
    if (now.escape >= 0) gains[now.escape] = gains[now.escape]! + 1;
    pool = [];
    if (now.compressing) nextCompress(share);
    else nextExplore();
    return true;
  }

  function step(share: number): boolean {
    if (n === 0) return false;
    if (sep.length() === 0) {
      first();
      return best !== null;
    }
    if (!now.compressing && share >= COMPRESS_FROM && best) {
      now.compressing = 1;
      nextCompress(share);
    } else if (now.compressing && share < COMPRESS_FROM) now.compressing = 0;
    const total = sep.total() === 0 ? 0 : sep.sweep();
    if (total === 0) {
      const length = reach(strip, sep.places);
      if (!best || length < best.length) best = { places: clone(sep.places), length, overlap: 0 };
      press();
      return improved(share);
    }
    if (total < now.leastTotal * 0.98) now.since = 0;
    else now.since++;
    if (total < now.leastTotal) {
      now.leastTotal = total;
      copyPlaces(sep.places, least);
    }
    sep.reweigh();
    if (now.since <= (now.compressing ? COMPRESS_PATIENCE : patience)) return false;
    now.since = 0;
    now.strikes = now.leastTotal < now.strikeTotal * 0.98 ? 1 : now.strikes + 1;
    now.strikeTotal = Math.min(now.strikeTotal, now.leastTotal);
    copyPlaces(least, sep.places);
    sep.refresh();
    // A near miss may still be a shorter lay than the best: all pieces at once may find the room that one at a time cannot.
    if (best && now.leastTotal < strip.scale * NEAR_MISS) {
      if (press()) return improved(share);
      copyPlaces(least, sep.places);
      sep.refresh();
    }
    if (now.strikes < (now.compressing ? COMPRESS_STRIKES : STRIKES)) return false;
    if (!best) begin(sep.length() * 1.08);
    else if (now.compressing) nextCompress(share);
    else if (now.shrink > SHRINK_LEAST) {
      now.shrink = Math.max(SHRINK_LEAST, now.shrink * SHRINK_DOWN);
      nextExplore();
    } else failed();
    return false;
  }

  function adopt(kept: Kept): void {
    if (best && kept.length >= best.length) return;
    best = { ...kept, places: clone(kept.places) };
    // An attempt at less than the new best still is worth its end, but not one at far less: a try at that would come later.
    if (sep.length() < kept.length && sep.length() >= kept.length * (1 - now.shrink)) return;
    pool = [];
    if (!now.compressing) nextExplore();
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
      gains: [...gains],
    }),
  };
}
