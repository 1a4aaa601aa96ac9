import { remember } from './hollows';
import {
  f64At,
  formAt,
  found,
  HELD,
  hollowX,
  hollowY,
  i32At,
  itemForm,
  itemStart,
  placeForm,
  placeX,
  placeY,
  scale,
} from './memory';
import { coarse } from './measure';
import { next } from './random';
import { gather, maxX, maxY, minX, minY } from './table';
import { atCost, atX, atY, polish, railedX, railedY, standAt, walk } from './walk';

/**
 * In mean piece sizes: how far about the present place is looked, the first step of a walk downhill (a hollow was walked to before: little is
 * left of it) and how far about a given place is looked, with how many samples beside the place itself.
 */
const REACH: f64 = 0.5;
const STEP: f64 = 0.16;
const STEP_KNOWN: f64 = 0.04;
const BESIDE: f64 = 0.25;
const BESIDE_SAMPLES: i32 = 2;

/** The cheapest samples, the cheapest first. Bytes of one: x, y, cost, first step of its walk, f64. */
const TOP: i32 = 32;
const MOST_TOPS: i32 = 8;
const tops: usize = memory.data(MOST_TOPS * TOP, 16);
let most: i32 = 0;
let kept: i32 = 0;

/** Begins to sample; the `count` cheapest will be kept. */
function beginSamples(count: i32): void {
  most = min(count, MOST_TOPS);
  kept = 0;
}

function costOfTop(k: i32): f64 {
  return f64At(tops + k * TOP, 2);
}

/** Measures one sample; if it is kept, it is walked from by `step` at first. */
function sample(f: i32, x: f64, y: f64, step: f64): void {
  const px = railedX(f, x);
  const py = railedY(f, y);
  if (!(px === px && py === py)) return;
  const c = coarse(px, py);
  if (kept === most && !(c < costOfTop(most - 1))) return;
  let k = kept < most ? kept++ : most - 1;
  for (; k > 0 && costOfTop(k - 1) > c; k--) memory.copy(tops + k * TOP, tops + (k - 1) * TOP, TOP);
  const at = tops + k * TOP;
  store<f64>(at, px);
  store<f64>(at, py, 8);
  store<f64>(at, c, 16);
  store<f64>(at, step, 24);
}

/** Measures `count` samples that have the middle of the form's box within `reach` of (cx, cy). */
function sampleAbout(f: i32, cx: f64, cy: f64, reach: f64, count: i32): void {
  const box = formAt(f);
  const ox = cx - (f64At(box, 0) + f64At(box, 2)) / 2;
  const oy = cy - (f64At(box, 1) + f64At(box, 3)) / 2;
  for (let k = 0; k < count; k++) {
    let a: f64;
    let b: f64;
    let square: f64;
    // Of the points in a square those within the circle: every direction alike, and no sine, which machines round differently.
    do {
      a = 2 * next() - 1;
      b = 2 * next() - 1;
      square = a * a + b * b;
    } while (square > 1 || square < 1e-12);
    const r = (reach * next()) / sqrt(square);
    sample(f, ox + r * a, oy + r * b, scale * STEP);
  }
}

/** Walks from every sample kept, polishes the best, and writes it into `found` where that is cheaper. `learn`: each end is remembered as a hollow. */
function settle(f: i32, learn: bool): bool {
  let bestX: f64 = 0;
  let bestY: f64 = 0;
  let bestCost: f64 = Infinity;
  for (let k = 0; k < kept; k++) {
    const at = tops + k * TOP;
    standAt(f64At(at, 0), f64At(at, 1), f64At(at, 2));
    walk(f, f64At(at, 3));
    if (learn) remember(f, atX, atY);
    if (atCost < bestCost) {
      bestX = atX;
      bestY = atY;
      bestCost = atCost;
    }
  }
  const cost = f64At(found, 2);
  // The coarse tables err by a few parts in a hundred: a form that is clearly dearer is not worth polishing.
  if (bestCost > cost * 1.25 || bestCost === Infinity) return false;
  standAt(bestX, bestY, bestCost);
  polish(f);
  if (!(atCost < cost)) return false;
  store<f64>(found, atX);
  store<f64>(found, atY, 8);
  store<f64>(found, atCost, 16);
  store<i32>(found, f, 24);
  return true;
}

/**
 * Looks for a cheaper place for item i than `found` already holds; true when it found one. Of each form it measures the hollows known, `wide`
 * samples all over the strip and `near` about the present place, and walks downhill from the `walked` cheapest.
 */
export function seek(i: i32, wide: i32, near: i32, walked: i32): bool {
  const lies = i32At(placeForm, i);
  const here = formAt(lies);
  const x = f64At(placeX, i);
  const y = f64At(placeY, i);
  const cx = x + (f64At(here, 0) + f64At(here, 2)) / 2;
  const cy = y + (f64At(here, 1) + f64At(here, 3)) / 2;
  let better = false;
  const end = i32At(itemStart, i + 1);
  for (let q = i32At(itemStart, i); q < end; q++) {
    const f = i32At(itemForm, q);
    if (!gather(i, f)) continue;
    beginSamples(walked);
    for (let k = f * HELD; k < (f + 1) * HELD; k++) {
      const hx = f64At(hollowX, k);
      if (hx !== hx) break;
      sample(f, hx, f64At(hollowY, k), scale * STEP_KNOWN);
    }
    for (let k = 0; k < wide; k++) {
      const sx = minX + next() * (maxX - minX);
      sample(f, sx, minY + next() * (maxY - minY), scale * STEP);
    }
    if (f === lies) sample(f, x, y, scale * STEP);
    sampleAbout(f, cx, cy, scale * REACH, near);
    if (settle(f, true)) better = true;
  }
  return better;
}

/** As `seek`, but only for places that have the middle of the item's box at (cx, cy) or close by; quick, and no hollow is learnt from it. */
export function seekBeside(i: i32, cx: f64, cy: f64): bool {
  let better = false;
  const end = i32At(itemStart, i + 1);
  for (let q = i32At(itemStart, i); q < end; q++) {
    const f = i32At(itemForm, q);
    if (!gather(i, f)) continue;
    beginSamples(1);
    sampleAbout(f, cx, cy, 0, 1);
    sampleAbout(f, cx, cy, scale * BESIDE, BESIDE_SAMPLES);
    if (settle(f, false)) better = true;
  }
  return better;
}
