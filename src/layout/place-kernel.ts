import { CELLS, exactDepth, way } from './depth-field.ts';
import type { Strip } from './strip.ts';

const NODES = CELLS + 1;
/** Bins across the strip's length and width: a sample only meets the pieces whose no-fit boxes reach its bin. */
const BINS_X = 32;
const BINS_Y = 4;

/** Where every item stands at the moment. Typed arrays, changed in place by the search and copied to keep. */
export interface Places {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly form: Int32Array;
}

/** Measures what it would cost to put one item somewhere, all others standing still. */
export interface PlaceKernel {
  /** Prepares for item i in form f. Returns false where the form does not fit the strip. */
  readonly gather: (places: Places, weights: Float64Array, length: number, i: number, f: number) => boolean;
  /** Range of the reference point: minX, maxX, minY, maxY. */
  readonly range: Float64Array;
  /** Weighted depth by the coarse table; gives up above `bound`. */
  readonly coarse: (x: number, y: number, bound: number) => number;
  /** Weighted depth by exact edges. Fills `hits` with what it met. */
  readonly exact: (x: number, y: number, bound: number) => number;
  /** Walls of the last exact measure: weight, depth, way out (unit); `hitCount` of them, four numbers each. */
  readonly hits: Float64Array;
  readonly hitCount: () => number;
}

/**
 * @param clear depth is measured as if every no-fit region were grown by this, so that a lay found free is free by more than rounding.
 */
export function placeKernel(strip: Strip, clear: number): PlaceKernel {
  const n = strip.itemShape.length;
  const F = strip.forms.length;
  const { fields, pairField, pairSign } = strip;
  const { nodes } = fields;
  const ax = new Float64Array(n);
  const ay = new Float64Array(n);
  const kx = new Float64Array(n);
  const ky = new Float64Array(n);
  const sx = new Float64Array(n);
  const qx = new Float64Array(n);
  const qy = new Float64Array(n);
  const weight = new Float64Array(n);
  const field = new Int32Array(n);
  const nodeBase = new Int32Array(n);
  const list = new Int32Array(BINS_X * BINS_Y * n);
  const listed = new Int32Array(BINS_X * BINS_Y);
  const range = new Float64Array(4);
  const hits = new Float64Array(4 * n);
  let hitCount = 0;
  let binX = 0;
  let binY = 0;

  function gather(places: Places, weights: Float64Array, length: number, i: number, f: number): boolean {
    const { box, low: y0, high: y1 } = strip.forms[f]!;
    const x0 = (range[0] = -box[0]);
    const x1 = (range[1] = length - box[2]);
    range[2] = y0;
    range[3] = y1;
    if (x1 < x0 || y1 < y0) return false;
    binX = x1 > x0 ? (BINS_X * 0.999999) / (x1 - x0) : 0;
    binY = y1 > y0 ? (BINS_Y * 0.999999) / (y1 - y0) : 0;
    listed.fill(0);
    for (let j = 0; j < n; j++) {
      if (j === i) continue;
      const pair = places.form[j]! * F + f;
      const k = pairField[pair]!;
      if (k < 0) continue;
      const s = pairSign[pair]!;
      const jx = places.x[j]!;
      const jy = places.y[j]!;
      const wide = fields.wide[k]!;
      const high = fields.high[k]!;
      const left = s > 0 ? jx + fields.x0[k]! : jx - fields.x0[k]! - wide;
      const under = s > 0 ? jy + fields.y0[k]! : jy - fields.y0[k]! - high;
      if (left > x1 || left + wide < x0 || under > y1 || under + high < y0) continue;
      ax[j] = jx + s * fields.x0[k]!;
      ay[j] = jy + s * fields.y0[k]!;
      kx[j] = s * fields.kx[k]!;
      ky[j] = s * fields.ky[k]!;
      sx[j] = s;
      qx[j] = jx;
      qy[j] = jy;
      weight[j] = weights[i * n + j]!;
      field[j] = k;
      nodeBase[j] = k * NODES * NODES;
      const bx0 = Math.max(0, (left - x0) * binX) | 0;
      const bx1 = Math.min(BINS_X - 1, (left + wide - x0) * binX) | 0;
      const by0 = Math.max(0, (under - y0) * binY) | 0;
      const by1 = Math.min(BINS_Y - 1, (under + high - y0) * binY) | 0;
      for (let by = by0; by <= by1; by++) {
        for (let bx = bx0; bx <= bx1; bx++) {
          const bin = by * BINS_X + bx;
          list[bin * n + listed[bin]!] = j;
          listed[bin] = listed[bin]! + 1;
        }
      }
    }
    return true;
  }

  function coarse(x: number, y: number, bound: number): number {
    const bin = (((y - range[2]!) * binY) | 0) * BINS_X + (((x - range[0]!) * binX) | 0);
    let total = 0;
    for (let c = bin * n, end = c + listed[bin]!; c < end; c++) {
      const j = list[c]!;
      const u = (x - ax[j]!) * kx[j]!;
      if (!(u > 0 && u < CELLS)) continue;
      const v = (y - ay[j]!) * ky[j]!;
      if (!(v > 0 && v < CELLS)) continue;
      const iu = u | 0;
      const iv = v | 0;
      const fu = u - iu;
      const fv = v - iv;
      const at = nodeBase[j]! + iv * NODES + iu;
      const a = nodes[at]!;
      const c0 = nodes[at + NODES]!;
      const lower = a + fu * (nodes[at + 1]! - a);
      const upper = c0 + fu * (nodes[at + NODES + 1]! - c0);
      const depth = lower + fv * (upper - lower);
      if (depth > 0) {
        total += weight[j]! * depth;
        if (total >= bound) return total;
      }
    }
    return total;
  }

  function exact(x: number, y: number, bound: number): number {
    const bin = (((y - range[2]!) * binY) | 0) * BINS_X + (((x - range[0]!) * binX) | 0);
    let total = 0;
    hitCount = 0;
    for (let c = bin * n, end = c + listed[bin]!; c < end; c++) {
      const j = list[c]!;
      const u = (x - ax[j]!) * kx[j]!;
      if (!(u > 0 && u < CELLS)) continue;
      const v = (y - ay[j]!) * ky[j]!;
      if (!(v > 0 && v < CELLS)) continue;
      const s = sx[j]!;
      const depth = exactDepth(fields, field[j]!, s * (x - qx[j]!), s * (y - qy[j]!)) + clear;
      if (depth > 0) {
        total += weight[j]! * depth;
        if (total >= bound) return total;
        const len = Math.sqrt(way[0]! * way[0]! + way[1]! * way[1]!);
        const h = 4 * hitCount++;
        hits[h] = weight[j]!;
        hits[h + 1] = depth;
        // Inside, the way leads out; within the clearance but outside, out is away from the outline.
        const out = (depth >= clear ? s : -s) / (len || 1);
        hits[h + 2] = way[0]! * out;
        hits[h + 3] = way[1]! * out;
      }
    }
    return total;
  }

  return { gather, range, coarse, exact, hits, hitCount: () => hitCount };
}

/** Depth of items i and j as they stand, grown by `clear`; 0 where they are free of each other. */
export function pairDepth(strip: Strip, places: Places, i: number, j: number, clear: number): number {
  const pair = places.form[j]! * strip.forms.length + places.form[i]!;
  const k = strip.pairField[pair]!;
  if (k < 0) return 0;
  const s = strip.pairSign[pair]!;
  const depth =
    exactDepth(strip.fields, k, s * (places.x[i]! - places.x[j]!), s * (places.y[i]! - places.y[j]!)) + clear;
  return depth > 0 ? depth : 0;
}
