import type { Hollows } from './hollows.ts';
import type { Places, PlaceKernel } from './place-kernel.ts';
import type { Random } from './random.ts';
import type { Form, Rail, Strip } from './strip.ts';

/** How hard one move looks. */
export interface MoveEffort {
  /** Samples over the whole strip, per form. */
  readonly wide: number;
  /** Samples about the present place, per form. */
  readonly near: number;
  /** Of all samples of a form, how many are walked downhill. */
  readonly walked: number;
}

/** A move in a sweep, beside the hollows its form is known to have: with those a third of the samples does more than all of them did without. */
export const EFFORT: MoveEffort = { wide: 8, near: 6, walked: 3 };
/**
 * In mean piece sizes: how far about the present place is looked, the first step of a walk downhill (a hollow was walked to before: little is
 * left of it) and the last, which the exact polish takes on from.
 */
const REACH = 0.5;
const STEP = 0.16;
const STEP_KNOWN = 0.04;
const FINE = 0.02;
/** How far about a given place is looked (in mean piece sizes), and with how many samples beside the place itself. */
const BESIDE = 0.25;
const BESIDE_SAMPLES = 2;

/** Nearest value on the rail within [low, high], or NaN where it has none there. */
export function onRail(rail: Rail | null, value: number, low: number, high: number): number {
  if (!rail) return value < low ? low : value > high ? high : value;
  if (rail.step <= 0) return rail.at >= low - 1e-9 && rail.at <= high + 1e-9 ? rail.at : NaN;
  const first = Math.ceil((low - rail.at) / rail.step - 1e-9);
  const last = Math.floor((high - rail.at) / rail.step + 1e-9);
  if (last < first) return NaN;
  const k = Math.round((value - rail.at) / rail.step);
  return rail.at + (k < first ? first : k > last ? last : k) * rail.step;
}

/** The eight ways a walk tries. */
const WAY_X = [1, 1, 0, -1, -1, -1, 0, 1];
const WAY_Y = [0, 1, 1, 1, 0, -1, -1, -1];

/** The place found: position, form, its weighted cost. */
export interface Found {
  x: number;
  y: number;
  form: number;
  cost: number;
}

export interface Mover {
  /** Looks for a cheaper place for item i than `found` already holds; true when it found one (written into `found`). */
  readonly seek: (
    places: Places,
    weights: Float64Array,
    length: number,
    i: number,
    effort: MoveEffort,
    found: Found,
  ) => boolean;
  /** As `seek`, but only for places that have the middle of the item's box at (cx, cy) or close by; quick, and no hollow is learnt from it. */
  readonly seekBeside: (
    places: Places,
    weights: Float64Array,
    length: number,
    i: number,
    cx: number,
    cy: number,
    found: Found,
  ) => boolean;
  /** Places a sample at random without regard to cost; false where the form does not fit. */
  readonly scatter: (
    places: Places,
    weights: Float64Array,
    length: number,
    i: number,
    found: Found,
  ) => boolean;
}

export function mover(strip: Strip, kernel: PlaceKernel, random: Random, hollows: Hollows): Mover {
  const { range, hits } = kernel;
  const topX = new Float64Array(8);
  const topY = new Float64Array(8);
  const topCost = new Float64Array(8);
  const topStep = new Float64Array(8);
  const stride = strip.scale * STEP;
  const strideKnown = strip.scale * STEP_KNOWN;
  const fine = strip.scale * FINE;
  const walls = new Float64Array(3 * 12);
  /** Where a walk or a polish stands: x, y, cost. Numbers that change this often are kept in typed arrays: variables of a closure would each be made anew. */
  const at = new Float64Array(3);

  /** Compass walk on the coarse table, step halved when no direction helps. */
  function walk(step: number, rx: Rail | null, ry: Rail | null): void {
    let h = step;
    let x = at[0]!;
    let y = at[1]!;
    let cost = at[2]!;
    let ahead = -1;
    while (h > fine && cost > 0) {
      let better = false;
      // What helped is tried again first.
      const start = ahead >= 0 ? ahead : (random.next() * 8) | 0;
      ahead = -1;
      for (let d = 0; d < 8; d++) {
        const k = (start + d * 3) & 7;
        const tx = onRail(rx, x + h * WAY_X[k]!, range[0]!, range[1]!);
        const ty = onRail(ry, y + h * WAY_Y[k]!, range[2]!, range[3]!);
        if (tx === x && ty === y) continue;
        const c = kernel.coarse(tx, ty, cost);
        if (c < cost) {
          x = tx;
          y = ty;
          cost = c;
          better = true;
          ahead = k;
          break;
        }
      }
      if (!better) h *= 0.5;
    }
    at[0] = x;
    at[1] = y;
    at[2] = cost;
  }

  /** Stands at (x, y), or as near as rails and strip allow, if that is cheaper. */
  function attempt(x: number, y: number, rx: Rail | null, ry: Rail | null): void {
    const tx = onRail(rx, x, range[0]!, range[1]!);
    const ty = onRail(ry, y, range[2]!, range[3]!);
    const c = kernel.exact(tx, ty, at[2]!);
    if (!(c < at[2]!)) return;
    at[0] = tx;
    at[1] = ty;
    at[2] = c;
  }

  /** From `at` moves to the best corner formed by the walls met, exactly; the cost is exact on return. */
  function polish(rx: Rail | null, ry: Rail | null): void {
    at[2] = kernel.exact(at[0]!, at[1]!, Infinity);
    for (let round = 0; round < 6 && at[2]! > 0; round++) {
      const m = Math.min(kernel.hitCount(), 8);
      for (let a = 0; a < m; a++) {
        walls[3 * a] = hits[4 * a + 1]!;
        walls[3 * a + 1] = hits[4 * a + 2]!;
        walls[3 * a + 2] = hits[4 * a + 3]!;
      }
      const x = at[0]!;
      const y = at[1]!;
      const cost = at[2]!;
      for (let a = 0; a < m; a++) {
        const da = walls[3 * a]!;
        const ux = walls[3 * a + 1]!;
        const uy = walls[3 * a + 2]!;
        attempt(x + ux * da, y + uy * da, rx, ry);
        // Along the wall of the cloth: the same depth won by moving in one axis only.
        if (Math.abs(ux) > 0.2) attempt(x + da / ux, y, rx, ry);
        if (Math.abs(uy) > 0.2) attempt(x, y + da / uy, rx, ry);
        for (let b = a + 1; b < m; b++) {
          const db = walls[3 * b]!;
          const vx = walls[3 * b + 1]!;
          const vy = walls[3 * b + 2]!;
          const det = ux * vy - uy * vx;
          if (Math.abs(det) < 0.05) continue;
          attempt(x + (da * vy - db * uy) / det, y + (ux * db - vx * da) / det, rx, ry);
        }
      }
      if (at[2]! >= cost * 0.999) return;
      if (at[2]! > 0) kernel.exact(at[0]!, at[1]!, Infinity);
    }
  }

  let kept = 0;
  /** Measures one sample; the `most` cheapest are kept in order, to be walked from by `step` at first. */
  function sample(
    sx: number,
    sy: number,
    rx: Rail | null,
    ry: Rail | null,
    most: number,
    step: number,
  ): void {
    const px = onRail(rx, sx, range[0]!, range[1]!);
    const py = onRail(ry, sy, range[2]!, range[3]!);
    if (!(px === px && py === py)) return;
    const bound = kept < most ? Infinity : topCost[most - 1]!;
    const c = kernel.coarse(px, py, bound);
    if (!(c < bound)) return;
    let k = kept < most ? kept++ : most - 1;
    for (; k > 0 && topCost[k - 1]! > c; k--) {
      topX[k] = topX[k - 1]!;
      topY[k] = topY[k - 1]!;
      topCost[k] = topCost[k - 1]!;
      topStep[k] = topStep[k - 1]!;
    }
    topX[k] = px;
    topY[k] = py;
    topCost[k] = c;
    topStep[k] = step;
  }

  /** Measures `count` samples that have the middle of the form's box within `reach` of (cx, cy). */
  function sampleAbout(form: Form, cx: number, cy: number, reach: number, count: number, most: number): void {
    const ox = cx - (form.box[0] + form.box[2]) / 2;
    const oy = cy - (form.box[1] + form.box[3]) / 2;
    for (let k = 0; k < count; k++) {
      const r = reach * random.next();
      const t = random.next() * 2 * Math.PI;
      sample(ox + r * Math.cos(t), oy + r * Math.sin(t), form.railX, form.railY, most, stride);
    }
  }

  /** Walks from every sample kept, polishes the best, and writes it into `found` where that is cheaper. `learn`: each end is remembered as a hollow. */
  function settle(f: number, learn: boolean, found: Found): boolean {
    const { railX, railY } = strip.forms[f]!;
    let bestX = 0;
    let bestY = 0;
    let bestCost = Infinity;
    for (let k = 0; k < kept; k++) {
      at[0] = topX[k]!;
      at[1] = topY[k]!;
      at[2] = topCost[k]!;
      walk(topStep[k]!, railX, railY);
      if (learn) hollows.remember(f, at[0]!, at[1]!);
      if (at[2]! < bestCost) {
        bestX = at[0]!;
        bestY = at[1]!;
        bestCost = at[2]!;
      }
    }
    // The coarse table errs by a few parts in a hundred: a form that is clearly dearer is not worth polishing.
    if (bestCost > found.cost * 1.25 || bestCost === Infinity) return false;
    at[0] = bestX;
    at[1] = bestY;
    polish(railX, railY);
    if (!(at[2]! < found.cost)) return false;
    found.x = at[0]!;
    found.y = at[1]!;
    found.form = f;
    found.cost = at[2]!;
    return true;
  }

  function seek(
    places: Places,
    weights: Float64Array,
    length: number,
    i: number,
    effort: MoveEffort,
    found: Found,
  ): boolean {
    let better = false;
    const here = strip.forms[places.form[i]!]!;
    const cx = places.x[i]! + (here.box[0] + here.box[2]) / 2;
    const cy = places.y[i]! + (here.box[1] + here.box[3]) / 2;
    for (const f of strip.itemForms[i]!) {
      if (!kernel.gather(places, weights, length, i, f)) continue;
      const form = strip.forms[f]!;
      const rx = form.railX;
      const ry = form.railY;
      const w = range[1]! - range[0]!;
      const h = range[3]! - range[2]!;
      kept = 0;
      for (let k = f * hollows.held, end = k + hollows.held; k < end && hollows.x[k] === hollows.x[k]; k++)
        sample(hollows.x[k]!, hollows.y[k]!, rx, ry, effort.walked, strideKnown);
      for (let k = 0; k < effort.wide; k++)
        sample(range[0]! + random.next() * w, range[2]! + random.next() * h, rx, ry, effort.walked, stride);
      if (f === places.form[i]) sample(places.x[i]!, places.y[i]!, rx, ry, effort.walked, stride);
      sampleAbout(form, cx, cy, strip.scale * REACH, effort.near, effort.walked);
      if (settle(f, true, found)) better = true;
    }
    return better;
  }

  const seekBeside: Mover['seekBeside'] = (places, weights, length, i, cx, cy, found) => {
    let better = false;
    for (const f of strip.itemForms[i]!) {
      if (!kernel.gather(places, weights, length, i, f)) continue;
      const form = strip.forms[f]!;
      kept = 0;
      sampleAbout(form, cx, cy, 0, 1, 1);
      sampleAbout(form, cx, cy, strip.scale * BESIDE, BESIDE_SAMPLES, 1);
      if (settle(f, false, found)) better = true;
    }
    return better;
  };

  function scatter(places: Places, weights: Float64Array, length: number, i: number, found: Found): boolean {
    const forms = strip.itemForms[i]!;
    const first = random.below(forms.length);
    for (let k = 0; k < forms.length; k++) {
      const f = forms[(first + k) % forms.length]!;
      if (!kernel.gather(places, weights, length, i, f)) continue;
      const form = strip.forms[f]!;
      const px = onRail(
        form.railX,
        range[0]! + random.next() * (range[1]! - range[0]!),
        range[0]!,
        range[1]!,
      );
      const py = onRail(
        form.railY,
        range[2]! + random.next() * (range[3]! - range[2]!),
        range[2]!,
        range[3]!,
      );
      if (!(px === px && py === py)) continue;
      found.x = px;
      found.y = py;
      found.form = f;
      found.cost = Infinity;
      return true;
    }
    return false;
  }

  return { seek, seekBeside, scatter };
}
