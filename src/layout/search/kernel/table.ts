import {
  f64At,
  fieldAt,
  formAt,
  forms,
  i32At,
  items,
  length,
  nodes,
  NODES,
  pairField,
  pairSign,
  placeForm,
  placeX,
  placeY,
  tables,
  weights,
  words,
} from './memory';

/**
 * Of every form is kept where each item's no-fit region stands for it, and who may be met at a spot: a bit an item, by column along the strip
 * and by row across it. From one move to the next few items are moved, and only those are brought up to date when the form is looked for again.
 */
export const COLUMNS: i32 = 64;
export const ROWS: i32 = 32;
/**
 * Bytes of a record: where the region's first corner stands, cells per length along either axis (f32, under 0 where it is read turned by half);
 * address of its nodes; field, its complement where turned (i32); first and last column and row (u8; the last before the first: none).
 */
export const RECORD: i32 = 32;
const FIRST_COLUMN: usize = 24;
const LAST_COLUMN: usize = 25;
const FIRST_ROW: usize = 26;
const LAST_ROW: usize = 27;

/** Tables of the form gathered. */
export let record: usize = 0;
export let column: usize = 0;
export let row: usize = 0;
/** Range of its reference point; columns and rows per length. */
export let minX: f64 = 0;
export let maxX: f64 = 0;
export let minY: f64 = 0;
export let maxY: f64 = 0;
export let perColumn: f64 = 0;
export let perRow: f64 = 0;
/** The item it is gathered for, and its weights against all (f32). */
export let item: i32 = 0;
export let weight: usize = 0;

/** Bytes of a form's tables: who is out of date (a bit an item), columns, rows, records. */
export function tableBytes(ofItems: i32, ofWords: i32): i32 {
  return (ofWords << 3) * (1 + COLUMNS + ROWS) + ofItems * RECORD;
}

/** Item i was moved. */
export function moved(i: i32): void {
  const size = tableBytes(items, words);
  const bit = u64(1) << (i & 63);
  let dated = tables + ((i >> 6) << 3);
  for (let f = 0; f < forms; f++, dated += size) store<u64>(dated, load<u64>(dated) | bit);
}

/** All may have been moved, or the length is another. */
export function allMoved(): void {
  const size = tableBytes(items, words);
  const w = words << 3;
  for (let f = 0; f < forms; f++) {
    const dated = tables + f * size;
    memory.fill(dated, 0xff, w);
    memory.fill(dated + w, 0, (COLUMNS + ROWS) * w);
    let at = dated + (1 + COLUMNS + ROWS) * w;
    for (let j = 0; j < items; j++, at += RECORD) reachNone(at);
  }
}

function reachNone(at: usize): void {
  store<u8>(at, 1, FIRST_COLUMN);
  store<u8>(at, 0, LAST_COLUMN);
  store<u8>(at, 1, FIRST_ROW);
  store<u8>(at, 0, LAST_ROW);
}

/** Prepares for item i in form f. False where the form does not fit the strip. */
export function gather(i: i32, f: i32): bool {
  const own = formAt(f);
  minX = -f64At(own, 0);
  maxX = length - f64At(own, 2);
  minY = f64At(own, 4);
  maxY = f64At(own, 5);
  if (maxX < minX || maxY < minY) return false;
  // A hair less than all, so that the far end still is in the last.
  perColumn = maxX > minX ? (COLUMNS * 0.999999) / (maxX - minX) : 0;
  perRow = maxY > minY ? (ROWS * 0.999999) / (maxY - minY) : 0;
  const w = words << 3;
  const dated = tables + f * tableBytes(items, words);
  column = dated + w;
  row = column + COLUMNS * w;
  record = row + ROWS * w;
  item = i;
  weight = weights + ((i * items) << 2);
  // The item itself is out of the tables as long as it is looked for, and out of date after that.
  const ownWord = dated + ((i >> 6) << 3);
  const ownBit = u64(1) << (i & 63);
  store<u64>(ownWord, load<u64>(ownWord) | ownBit);
  for (let word = 0; word < words; word++) {
    let left = load<u64>(dated + (word << 3));
    for (; left !== 0; left &= left - 1) {
      const j = (word << 6) + i32(ctz(left));
      if (j < items) update(j, f);
    }
    store<u64>(dated + (word << 3), 0);
  }
  store<u64>(ownWord, ownBit);
  return true;
}

/** Brings item j up to date in the tables gathered. */
function update(j: i32, f: i32): void {
  const at = record + j * RECORD;
  mark(j, false);
  reachNone(at);
  // Also of whom nobody meets: measure.ts lets the item itself stand in for nobody.
  store<u32>(at, nodes, 16);
  const pair = i32At(placeForm, j) * forms + f;
  const k = i32At(pairField, pair);
  if (j === item || k < 0) return;
  const turned = load<i8>(pairSign + pair) < 0;
  const field = fieldAt(k);
  const wide = f64At(field, 2);
  const high = f64At(field, 3);
  const jx = f64At(placeX, j);
  const jy = f64At(placeY, j);
  const ax = turned ? jx - f64At(field, 0) : jx + f64At(field, 0);
  const ay = turned ? jy - f64At(field, 1) : jy + f64At(field, 1);
  const left = turned ? ax - wide : ax;
  const under = turned ? ay - high : ay;
  if (left > maxX || left + wide < minX || under > maxY || under + high < minY) return;
  const kx = f64At(field, 4);
  const ky = f64At(field, 5);
  store<f32>(at, f32(ax));
  store<f32>(at, f32(ay), 4);
  store<f32>(at, f32(turned ? -kx : kx), 8);
  store<f32>(at, f32(turned ? -ky : ky), 12);
  store<u32>(at, nodes + k * (NODES * NODES * 4), 16);
  store<i32>(at, turned ? ~k : k, 20);
  store<u8>(at, left > minX ? i32((left - minX) * perColumn) : 0, FIRST_COLUMN);
  store<u8>(at, left + wide < maxX ? i32((left + wide - minX) * perColumn) : COLUMNS - 1, LAST_COLUMN);
  store<u8>(at, under > minY ? i32((under - minY) * perRow) : 0, FIRST_ROW);
  store<u8>(at, under + high < maxY ? i32((under + high - minY) * perRow) : ROWS - 1, LAST_ROW);
  mark(j, true);
}

/** Sets or clears item j's bits in the columns and rows it reaches. */
function mark(j: i32, on: bool): void {
  const at = record + j * RECORD;
  const word = (j >> 6) << 3;
  const bit = u64(1) << (j & 63);
  markLine(column + word, load<u8>(at, FIRST_COLUMN), load<u8>(at, LAST_COLUMN), bit, on);
  markLine(row + word, load<u8>(at, FIRST_ROW), load<u8>(at, LAST_ROW), bit, on);
}

function markLine(line: usize, from: i32, to: i32, bit: u64, on: bool): void {
  const w = words << 3;
  for (let at = line + from * w, k = from; k <= to; k++, at += w) {
    const now = load<u64>(at);
    store<u64>(at, on ? now | bit : now & ~bit);
  }
}
