import { exactDepth, wayX, wayY } from './depth';
import {
  CELLS,
  clear,
  f64At,
  forms,
  hits,
  i32At,
  met,
  NODES,
  pairField,
  pairSign,
  placeForm,
  placeX,
  placeY,
  words,
} from './memory';
import {
  column,
  COLUMNS,
  item,
  minX,
  minY,
  perColumn,
  perRow,
  RECORD,
  record,
  row,
  ROWS,
  weight,
} from './table';

/** Bytes from one row of nodes to the next. */
const NODE_ROW: i32 = NODES * 4;
/** Half as much again as 2²³: of an f32 as large as this the lowest bits are whole numbers. */
const WHOLE: f32 = 12582912;
/** Bytes of a hit: weight, depth, way out (unit), f64. */
export const HIT: i32 = 32;

/** Where the bits of a spot's column and row stand. A rail may lead beyond the range by a rounding: the last are meant then. */
function columnOf(x: f64): usize {
  return column + ((min(i32((x - minX) * perColumn), COLUMNS - 1) * words) << 3);
}
function rowOf(y: f64): usize {
  return row + ((min(i32((y - minY) * perRow), ROWS - 1) * words) << 3);
}

/**
 * Weighted depth of the item gathered, by the coarse tables: it errs by a few parts in a hundred. Two of those that may be met are measured at
 * once, and nothing branches but for their number: a branch guessed wrong costs as much as measuring two more.
 */
export function coarse(x: f64, y: f64): f64 {
  const c = columnOf(x);
  const r = rowOf(y);
  const fx = f32(x);
  const fy = f32(y);
  const spot = f32x4.replace_lane(
    f32x4.replace_lane(f32x4.replace_lane(f32x4.splat(fx), 1, fy), 2, fx),
    3,
    fy,
  );
  const none = f32x4.splat(0);
  const most = f32x4.splat(f32(CELLS) - 0.00001);
  const half = f32x4.splat(0.5);
  const whole = f32x4.splat(WHOLE);
  let sum = none;
  for (let word = 0, end = words << 3; word < end; word += 16) {
    let low = load<u64>(c + word) & load<u64>(r + word);
    let high = load<u64>(c + word, 8) & load<u64>(r + word, 8);
    const base = word << 3;
    for (let pairs = i32(popcnt(low) + popcnt(high) + 1) >> 1; pairs > 0; pairs--) {
      // All ones when the lower word is used up: then the upper one is read.
      let up = -u64(low === 0);
      let left = low | (high & up);
      const p = base + i32(ctz(left)) + (i32(up) & 64);
      left &= left - 1;
      low = left & ~up;
      high = (high & ~up) | (left & up);
      up = -u64(low === 0);
      left = low | (high & up);
      // With none left for the second place the item itself takes it, which weighs nothing.
      const over = -i32(left === 0);
      const q = ((base + i32(ctz(left)) + (i32(up) & 64)) & ~over) | (item & over);
      left &= left - 1;
      low = left & ~up;
      high = (high & ~up) | (left & up);

      const recordP = record + p * RECORD;
      const recordQ = record + q * RECORD;
      const one = v128.load(recordP);
      const two = v128.load(recordQ);
      const corners = v128.shuffle<f32>(one, two, 0, 1, 4, 5);
      const cellsPer = v128.shuffle<f32>(one, two, 2, 3, 6, 7);
      // In cells, of p along and across, then of q. The rim of a table is outside its region, so what lies beyond counts as nothing there too.
      const at = f32x4.pmin(most, f32x4.pmax(none, f32x4.mul(f32x4.sub(spot, corners), cellsPer)));
      const shifted = f32x4.add(f32x4.sub(at, half), whole);
      const part = f32x4.sub(at, f32x4.sub(shifted, whole));
      const cell = v128.and(shifted, i32x4.splat(2 * CELLS - 1));
      const node = i32x4.dot_i16x8_s(i16x8.narrow_i32x4_s(cell, cell), i32x4.splat(4 | (NODE_ROW << 16)));
      const nodeP: usize = load<u32>(recordP, 16) + i32x4.extract_lane(node, 0);
      const nodeQ: usize = load<u32>(recordQ, 16) + i32x4.extract_lane(node, 1);
      const lower = v128.load_lane<u64>(nodeQ, v128.load_zero<u64>(nodeP), 1);
      const upper = v128.load_lane<u64>(nodeQ, v128.load_zero<u64>(nodeP, NODE_ROW), 1, NODE_ROW);
      const across = v128.shuffle<f32>(part, part, 1, 1, 3, 3);
      const left2 = f32x4.add(lower, f32x4.mul(across, f32x4.sub(upper, lower)));
      const right2 = v128.shuffle<f32>(left2, left2, 1, 1, 3, 3);
      const depth = f32x4.pmax(none, f32x4.add(left2, f32x4.mul(part, f32x4.sub(right2, left2))));
      const weighs = v128.load_lane<u32>(weight + (q << 2), v128.load_zero<u32>(weight + (p << 2)), 2);
      sum = f32x4.add(sum, f32x4.mul(weighs, depth));
    }
  }
  return f64(f32x4.extract_lane(sum, 0) + f32x4.extract_lane(sum, 2));
}

/** Of the last `exact`: how many are in `hits`. */
export let hitCount: i32 = 0;

/** Weighted depth of the item gathered, by exact edges; gives up above `bound`. What it met is in `hits`. */
export function exact(x: f64, y: f64, bound: f64): f64 {
  const end = meet(x, y);
  let total: f64 = 0;
  hitCount = 0;
  for (let k = 0; k < end; k++) {
    const j = i32At(met, k);
    const field = load<i32>(record + j * RECORD, 20);
    const s: f64 = field < 0 ? -1 : 1;
    const depth =
      exactDepth(field < 0 ? ~field : field, s * (x - f64At(placeX, j)), s * (y - f64At(placeY, j))) + clear;
    if (!(depth > 0)) continue;
    const weighs = f64(load<f32>(weight + (j << 2)));
    total += weighs * depth;
    if (total >= bound) return total;
    const len = sqrt(wayX * wayX + wayY * wayY);
    // Inside, the way leads out; within the clearance but outside, out is away from the outline.
    const out = (depth >= clear ? s : -s) / (len > 0 ? len : 1);
    const hit = hits + hitCount * HIT;
    store<f64>(hit, weighs);
    store<f64>(hit, depth, 8);
    store<f64>(hit, wayX * out, 16);
    store<f64>(hit, wayY * out, 24);
    hitCount++;
  }
  return total;
}

/** Lists in `met` whose boxes reach the spot; returns how many. */
function meet(x: f64, y: f64): i32 {
  const c = columnOf(x);
  const r = rowOf(y);
  let count = 0;
  for (let word = 0; word < words; word++) {
    for (let left = load<u64>(c + (word << 3)) & load<u64>(r + (word << 3)); left !== 0; left &= left - 1)
      store<i32>(met + (count++ << 2), (word << 6) + i32(ctz(left)));
  }
  return count;
}

/** Depth of items i and j as they stand, grown by the clearance; 0 where they are free of each other. */
export function pairDepth(i: i32, j: i32): f64 {
  const pair = i32At(placeForm, j) * forms + i32At(placeForm, i);
  const k = i32At(pairField, pair);
  if (k < 0) return 0;
  const s = f64(load<i8>(pairSign + pair));
  const depth =
    exactDepth(k, s * (f64At(placeX, i) - f64At(placeX, j)), s * (f64At(placeY, i) - f64At(placeY, j))) +
    clear;
  return depth > 0 ? depth : 0;
}
