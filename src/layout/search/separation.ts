import { exchanger } from './exchange.ts';
import type { Found, MoveEffort, Places, SavedHollows } from './placer.ts';
import { EFFORT, NO_HOLLOWS, placer } from './placer.ts';
import { onRail } from './rail.ts';
import type { Random } from './random.ts';
import type { Strip } from './strip.ts';

export function emptyPlaces(n: number): Places {
  return { x: new Float64Array(n), y: new Float64Array(n), form: new Int32Array(n) };
}

export function copyPlaces(from: Places, to: Places): void {
  to.x.set(from.x);
  to.y.set(from.y);
  to.form.set(from.form);
}

/** Guided removal of overlap at one fixed length: pairs that stay in conflict grow dearer until something gives. */
export interface Separation {
  readonly places: Places;
  readonly length: () => number;
  /** Sets the length and pulls every piece inside it; weights fall back to one. */
  readonly start: (length: number) => void;
  /** Recomputes every pair after `places` was changed from outside. */
  readonly refresh: () => void;
  /** One sweep over the pieces in conflict: each looks for a better place, and where it finds none or still overlaps, for one to exchange with. Returns the sum of overlap left (0: free). */
  readonly sweep: (effort?: MoveEffort) => number;
  readonly total: () => number;
  /** Grows weights of pairs in conflict, lets the others relax. */
  readonly reweigh: () => void;
  /** Puts item i where it meets nothing within the length given; false where no such place was found. */
  readonly seat: (i: number, within: number) => boolean;
  /** Puts item i anywhere in the strip, in any turn that fits; false where none does. Pairs must be measured anew after it. */
  readonly scatter: (i: number) => boolean;
  readonly depth: Float64Array;
  readonly weights: Float32Array;
  /** The one source of chance of the search. */
  readonly random: Random;
  readonly saveHollows: () => SavedHollows;
}

/** A first seat is looked for harder than a move is. */
const SEAT: MoveEffort = { wide: 150, near: 0, walked: 4 };

/** Free by at least this share of the mean piece size: above rounding, far below a thread, and so little that ten pieces find room in `HAIR`. */
export const CLEAR = 5e-9;

/**
 * A pair in conflict grows dearer by this share a sweep, the deepest by `GROW_MOST`; free pairs fall back by `DECAY` a sweep. Nearly alike for
 * all: with 0.3 and 1 shirts at 85 % from a random start took twice the work, albano at 87 % half as much again; slower growth or 1.5 is worse still.
 * Pairs that forget at 0.98 a sweep keep pieces apart that no longer mind (swim at 74 % from a random start took 3 to 4 times the work);
 * at 0.93 a layout that is nearly free forgets what jammed it.
 */
const GROW = 0.5;
const GROW_MOST = 0.6;
const DECAY = 0.96;

/**
 * Begins with no layout: fill `places`, then `start`.
 * @param chance the state of its random numbers.
 * @param from the hollows of a search that was saved.
 */
export function separation(
  strip: Strip,
  chance: readonly number[],
  from: SavedHollows = NO_HOLLOWS,
): Separation {
  const n = strip.itemShape.length;
  const clear = strip.scale * CLEAR;
  const move = placer(strip, chance, clear * 2, from);
  const { places, weights, random } = move;
  const depth = new Float64Array(n * n);
  const base = new Float64Array(n * n);
  const order = new Int32Array(n);
  /** Pairs (i · n + j, i < j) in conflict or still dearer than at first; the others need no look at the end of a sweep. */
  const hot = new Int32Array(n * n);
  const isHot = new Uint8Array(n * n);
  let hotCount = 0;
  const found: Found = { x: 0, y: 0, form: 0, cost: 0 };
  const exchange = exchanger(strip, move, { depth, costOf, refreshItem });
  let length = 0;
  let total = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const a = strip.area[strip.itemShape[i]!]! * strip.area[strip.itemShape[j]!]!;
      // By the root of both sizes: by the size itself small pieces stay jammed for long (shirts, marques).
      base[i * n + j] = i === j ? 0 : Math.fround(Math.sqrt(Math.sqrt(a)) / strip.scale);
    }
  }

  // A pair within the smaller of the two clearances is free: the larger one is only what moves aim for.
  const measure = (i: number, j: number): number => {
    const d = move.pairDepth(i, j);
    return d > clear * 1.5 ? d : 0;
  };

  function mark(i: number, j: number): void {
    const p = i < j ? i * n + j : j * n + i;
    if (isHot[p]) return;
    isHot[p] = 1;
    hot[hotCount++] = p;
  }

  function refresh(): void {
    move.renew(length);
    total = 0;
    for (let i = 0; i < n; i++) {
      for (let j = i + 1; j < n; j++) {
        const d = measure(i, j);
        depth[i * n + j] = depth[j * n + i] = d;
        if (d > 0 || weights[i * n + j]! > base[i * n + j]!) mark(i, j);
        total += d * base[i * n + j]!;
      }
    }
  }

  function refreshItem(i: number): void {
    for (let j = 0; j < n; j++) {
      if (j === i) continue;
      const d = measure(i, j);
      depth[i * n + j] = depth[j * n + i] = d;
      if (d > 0) mark(i, j);
    }
  }

  function costOf(i: number): number {
    let c = 0;
    for (let j = 0; j < n; j++) c += weights[i * n + j]! * depth[i * n + j]!;
    return c;
  }

  function start(to: number): void {
    length = to;
    weights.set(base);
    for (let k = 0; k < hotCount; k++) isHot[hot[k]!] = 0;
    hotCount = 0;
    for (let i = 0; i < n; i++) {
      if (strip.pinned[i]) continue;
      let form = strip.forms[places.form[i]!]!;
      if (form.box[2] - form.box[0] > length) {
        // Too long for the strip as it lies: another turn of it is not.
        const other = strip.itemForms[i]!.find(
          (f) => strip.forms[f]!.box[2] - strip.forms[f]!.box[0] <= length,
        );
        if (other === undefined) continue;
        places.form[i] = other;
        form = strip.forms[other]!;
      }
      const x = onRail(form.railX, places.x[i]!, -form.box[0], length - form.box[2]);
      const y = onRail(form.railY, places.y[i]!, form.low, form.high);
      if (x === x && y === y) {
        places.x[i] = x;
        places.y[i] = y;
      } else scatter(i);
    }
    refresh();
  }

  function sweep(effort: MoveEffort = EFFORT): number {
    let m = 0;
    for (let i = 0; i < n; i++) if (!strip.pinned[i] && costOf(i) > 0) order[m++] = i;
    for (let k = m - 1; k > 0; k--) {
      const r = random.below(k + 1);
      const t = order[k]!;
      order[k] = order[r]!;
      order[r] = t;
    }
    for (let k = 0; k < m; k++) {
      const i = order[k]!;
      const now = costOf(i);
      if (now <= 0) continue;
      found.cost = now;
      if (move.seek(i, effort, found)) {
        move.put(i, found);
        refreshItem(i);
        if (found.cost > 0) exchange(i, false);
      } else exchange(i, true);
    }
    // Running sums drift; the end of a sweep is the place to be exact. Always in one order: a search that was saved and continued sums alike.
    hot.subarray(0, hotCount).sort();
    total = 0;
    for (let k = 0; k < hotCount; k++) total += depth[hot[k]!]! * base[hot[k]!]!;
    return total;
  }

  function reweigh(): void {
    let most = 0;
    for (let k = 0; k < hotCount; k++) most = Math.max(most, depth[hot[k]!]! * base[hot[k]!]!);
    for (let k = 0; k < hotCount; k++) {
      const p = hot[k]!;
      const now = weights[p]!;
      const next =
        depth[p]! > 0
          ? now * (1 + GROW + (GROW_MOST - GROW) * ((depth[p]! * base[p]!) / most))
          : Math.max(base[p]!, now * DECAY);
      weights[p] = next;
      weights[(p % n) * n + ((p / n) | 0)] = next;
      if (next > base[p]! || depth[p]! > 0) continue;
      isHot[p] = 0;
      hot[k--] = hot[--hotCount]!;
    }
  }

  function seat(i: number, within: number): boolean {
    found.cost = Infinity;
    weights.set(base);
    move.renew(within);
    if (!move.seek(i, SEAT, found) || found.cost > 0) return false;
    move.put(i, found);
    return true;
  }

  function scatter(i: number): boolean {
    const forms = strip.itemForms[i]!;
    const first = random.below(forms.length);
    for (let k = 0; k < forms.length; k++) {
      const f = forms[(first + k) % forms.length]!;
      const { box, low, high, railX, railY } = strip.forms[f]!;
      const most = length - box[2];
      if (most < -box[0] || high < low) continue;
      const x = onRail(railX, random.next() * (most + box[0]) - box[0], -box[0], most);
      const y = onRail(railY, low + random.next() * (high - low), low, high);
      if (!(x === x && y === y)) continue;
      places.x[i] = x;
      places.y[i] = y;
      places.form[i] = f;
      return true;
    }
    return false;
  }

  return {
    places,
    length: () => length,
    start,
    refresh,
    sweep,
    total: () => total,
    reweigh,
    seat,
    scatter,
    depth,
    weights,
    random,
    saveHollows: move.saveHollows,
  };
}
