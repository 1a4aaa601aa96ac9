import { f64At, formAt, hits, scale } from './memory';
import { coarse, exact, HIT, hitCount } from './measure';
import { next } from './random';
import { maxX, maxY, minX, minY } from './table';

/** The last step of a walk, in mean piece sizes; the exact polish takes on from there. */
const FINE: f64 = 0.02;

/** Where a walk or a polish stands, and what that costs. */
export let atX: f64 = 0;
export let atY: f64 = 0;
export let atCost: f64 = 0;

export function standAt(x: f64, y: f64, cost: f64): void {
  atX = x;
  atY = y;
  atCost = cost;
}

/** Nearest value to x, or to y, at which form f may stand; NaN where there is none. */
export function railedX(f: i32, x: f64): f64 {
  const form = formAt(f);
  return onRail(f64At(form, 6), f64At(form, 7), x, minX, maxX);
}
export function railedY(f: i32, y: f64): f64 {
  const form = formAt(f);
  return onRail(f64At(form, 8), f64At(form, 9), y, minY, maxY);
}

/** As in ../rail.ts; a step under 0 is no rail. */
function onRail(at: f64, step: f64, value: f64, low: f64, high: f64): f64 {
  if (step < 0) return value < low ? low : value > high ? high : value;
  if (step === 0) return at >= low - 1e-9 && at <= high + 1e-9 ? at : NaN;
  const first = ceil((low - at) / step - 1e-9);
  const last = floor((high - at) / step + 1e-9);
  if (last < first) return NaN;
  const k = floor((value - at) / step + 0.5);
  return at + (k < first ? first : k > last ? last : k) * step;
}

/** The eight ways a walk tries. */
function stepX(k: i32): f64 {
  return k === 2 || k === 6 ? 0 : k > 2 && k < 6 ? -1 : 1;
}
function stepY(k: i32): f64 {
  return k === 0 || k === 4 ? 0 : k > 4 ? -1 : 1;
}

/** Compass walk on the coarse tables, step halved when no direction helps. */
export function walk(f: i32, step: f64): void {
  const fine = scale * FINE;
  let h = step;
  let x = atX;
  let y = atY;
  let cost = atCost;
  let ahead = -1;
  while (h > fine && cost > 0) {
    let better = false;
    // What helped is tried again first.
    const start = ahead >= 0 ? ahead : i32(next() * 8);
    ahead = -1;
    for (let d = 0; d < 8; d++) {
      const k = (start + d * 3) & 7;
      const tx = railedX(f, x + h * stepX(k));
      const ty = railedY(f, y + h * stepY(k));
      if (tx === x && ty === y) continue;
      const c = coarse(tx, ty);
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
  standAt(x, y, cost);
}

/** Stands at (x, y), or as near as rails and strip allow, if that is cheaper. */
function attempt(f: i32, x: f64, y: f64): void {
  const tx = railedX(f, x);
  const ty = railedY(f, y);
  const c = exact(tx, ty, atCost);
  if (c < atCost) standAt(tx, ty, c);
}

/** Walls looked at, the first ones met, and their copy: `exact` overwrites what it met. */
const MOST_WALLS: i32 = 8;
const walls: usize = memory.data(MOST_WALLS * HIT, 16);

/** Moves to the best corner formed by the walls met, exactly; the cost is exact on return. */
export function polish(f: i32): void {
  atCost = exact(atX, atY, Infinity);
  for (let round = 0; round < 6 && atCost > 0; round++) {
    const count = min(hitCount, MOST_WALLS);
    memory.copy(walls, hits, count * HIT);
    const x = atX;
    const y = atY;
    const cost = atCost;
    for (let a = 0; a < count; a++) {
      const wall = walls + a * HIT;
      const da = f64At(wall, 1);
      const ux = f64At(wall, 2);
      const uy = f64At(wall, 3);
      attempt(f, x + ux * da, y + uy * da);
      // Along the wall of the cloth: the same depth won by moving in one axis only.
      if (abs(ux) > 0.2) attempt(f, x + da / ux, y);
      if (abs(uy) > 0.2) attempt(f, x, y + da / uy);
      for (let b = a + 1; b < count; b++) {
        const other = walls + b * HIT;
        const db = f64At(other, 1);
        const vx = f64At(other, 2);
        const vy = f64At(other, 3);
        const det = ux * vy - uy * vx;
        if (abs(det) < 0.05) continue;
        attempt(f, x + (da * vy - db * uy) / det, y + (ux * db - vx * da) / det);
      }
    }
    if (atCost >= cost * 0.999) return;
    if (atCost > 0) exact(atX, atY, Infinity);
  }
}
