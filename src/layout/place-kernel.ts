import { CELLS, exactDepth, way } from './depth-field.ts';
import type { Strip } from './strip.ts';

const NODES = CELLS + 1;
/** Columns along the strip and rows across it: a sample only meets the pieces whose no-fit boxes reach both its column and its row. */
const COLUMNS = 64;
const ROWS = 16;

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
  /** Five numbers an item: where its field's first corner stands and cells per length along either axis, and the pair's weight. */
  const at = new Float64Array(5 * n);
  const field = new Int32Array(n);
  /** One bit an item, 32 a word: whose box reaches the column or row. */
  const words = Math.ceil(n / 32);
  const column = new Int32Array((COLUMNS + 1) * words);
  const row = new Int32Array((ROWS + 1) * words);
  /** Whose box ended in the column or row before. */
  const columnEnd = new Int32Array((COLUMNS + 1) * words);
  const rowEnd = new Int32Array((ROWS + 1) * words);
  const range = new Float64Array(4);
  const hits = new Float64Array(4 * n);
  let hitCount = 0;
  let perColumn = 0;
  let perRow = 0;
  let stood: Places = { x: at, y: at, form: field };
  /** Six numbers a field: first corner, width, height, cells per length along either axis. */
  const corner = new Float64Array(6 * fields.count);
  for (let k = 0; k < fields.count; k++)
    corner.set(
      [fields.x0[k]!, fields.y0[k]!, fields.wide[k]!, fields.high[k]!, fields.kx[k]!, fields.ky[k]!],
      6 * k,
    );

  function gather(places: Places, weights: Float64Array, length: number, i: number, f: number): boolean {
    const { box, low: y0, high: y1 } = strip.forms[f]!;
    const x0 = (range[0] = -box[0]);
    const x1 = (range[1] = length - box[2]);
    range[2] = y0;
    range[3] = y1;
    if (x1 < x0 || y1 < y0) return false;
    perColumn = x1 > x0 ? (COLUMNS * 0.999999) / (x1 - x0) : 0;
    perRow = y1 > y0 ? (ROWS * 0.999999) / (y1 - y0) : 0;
    column.fill(0);
    row.fill(0);
    columnEnd.fill(0);
    rowEnd.fill(0);
    const { x, y, form } = (stood = places);
    for (let j = 0; j < n; j++) {
      if (j === i) continue;
      const pair = form[j]! * F + f;
      const k = pairField[pair]!;
      if (k < 0) continue;
      const s = pairSign[pair]!;
      const jx = x[j]!;
      const jy = y[j]!;
      const g = 6 * k;
      const wide = corner[g + 2]!;
      const high = corner[g + 3]!;
      const ax = jx + s * corner[g]!;
      const ay = jy + s * corner[g + 1]!;
      const left = s > 0 ? ax : ax - wide;
      const under = s > 0 ? ay : ay - high;
      if (left > x1 || left + wide < x0 || under > y1 || under + high < y0) continue;
      const r = 5 * j;
      at[r] = ax;
      at[r + 1] = s * corner[g + 4]!;
      at[r + 2] = ay;
      at[r + 3] = s * corner[g + 5]!;
      at[r + 4] = weights[i * n + j]!;
      field[j] = s > 0 ? k : ~k;
      const c0 = left > x0 ? ((left - x0) * perColumn) | 0 : 0;
      const c1 = left + wide < x1 ? ((left + wide - x0) * perColumn) | 0 : COLUMNS - 1;
      const r0 = under > y0 ? ((under - y0) * perRow) | 0 : 0;
      const r1 = under + high < y1 ? ((under + high - y0) * perRow) | 0 : ROWS - 1;
      const word = j >> 5;
      const bit = 1 << (j & 31);
      column[c0 * words + word]! |= bit;
      columnEnd[(c1 + 1) * words + word]! |= bit;
      row[r0 * words + word]! |= bit;
      rowEnd[(r1 + 1) * words + word]! |= bit;
    }
    // From first and last to all in between.
    for (let k = words; k < COLUMNS * words; k++)
      column[k] = (column[k - words]! & ~columnEnd[k]!) | column[k]!;
    for (let k = words; k < ROWS * words; k++) row[k] = (row[k - words]! & ~rowEnd[k]!) | row[k]!;
    return true;
  }

  function coarse(x: number, y: number, bound: number): number {
    const inColumn = (((x - range[0]!) * perColumn) | 0) * words;
    const inRow = (((y - range[2]!) * perRow) | 0) * words;
    let total = 0;
    for (let word = 0; word < words; word++) {
      let left = column[inColumn + word]! & row[inRow + word]!;
      while (left !== 0) {
        const lowest = left & -left;
        left ^= lowest;
        const j = word * 32 + 31 - Math.clz32(lowest);
        const r = 5 * j;
        const u = (x - at[r]!) * at[r + 1]!;
        if (!(u > 0 && u < CELLS)) continue;
        const v = (y - at[r + 2]!) * at[r + 3]!;
        if (!(v > 0 && v < CELLS)) continue;
        const iu = u | 0;
        const iv = v | 0;
        const fu = u - iu;
        const fv = v - iv;
        const k = field[j]!;
        const node = (k < 0 ? ~k : k) * (NODES * NODES) + iv * NODES + iu;
        const a = nodes[node]!;
        const c0 = nodes[node + NODES]!;
        const lower = a + fu * (nodes[node + 1]! - a);
        const upper = c0 + fu * (nodes[node + NODES + 1]! - c0);
        const depth = lower + fv * (upper - lower);
        if (depth > 0) {
          total += at[r + 4]! * depth;
          if (total >= bound) return total;
        }
      }
    }
    return total;
  }

  function exact(x: number, y: number, bound: number): number {
    const inColumn = (((x - range[0]!) * perColumn) | 0) * words;
    const inRow = (((y - range[2]!) * perRow) | 0) * words;
    let total = 0;
    hitCount = 0;
    for (let word = 0; word < words; word++) {
      let left = column[inColumn + word]! & row[inRow + word]!;
      while (left !== 0) {
        const lowest = left & -left;
        left ^= lowest;
        const j = word * 32 + 31 - Math.clz32(lowest);
        const r = 5 * j;
        const u = (x - at[r]!) * at[r + 1]!;
        if (!(u > 0 && u < CELLS)) continue;
        const v = (y - at[r + 2]!) * at[r + 3]!;
        if (!(v > 0 && v < CELLS)) continue;
        const s = field[j]! < 0 ? -1 : 1;
        const k = s < 0 ? ~field[j]! : field[j]!;
        const depth = exactDepth(fields, k, s * (x - stood.x[j]!), s * (y - stood.y[j]!)) + clear;
        if (depth > 0) {
          total += at[r + 4]! * depth;
          if (total >= bound) return total;
          const len = Math.sqrt(way[0]! * way[0]! + way[1]! * way[1]!);
          const h = 4 * hitCount++;
          hits[h] = at[r + 4]!;
          hits[h + 1] = depth;
          // Inside, the way leads out; within the clearance but outside, out is away from the outline.
          const out = (depth >= clear ? s : -s) / (len || 1);
          hits[h + 2] = way[0]! * out;
          hits[h + 3] = way[1]! * out;
        }
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
