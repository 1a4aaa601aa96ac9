/**
 * The memory that the kernel shares with its host. These sources are AssemblyScript (TypeScript's syntax, fixed-width numbers, no objects):
 * `npm run kernel` makes ../kernel-bytes.ts of them. They reckon in addresses because that is twice as fast, and only for that; what they
 * know of the world is laid out by ../kernel-memory.ts.
 */

/** Cells along each axis of a depth field, as in ../depth-field.ts. */
export const CELLS: i32 = 32;
export const NODES: i32 = CELLS + 1;
/** Places remembered per form, see hollows.ts. */
export const HELD: i32 = 24;

/** Bytes of a field (first corner, width, height, cells per length along either axis: f64). */
const FIELD: i32 = 48;
/** Bytes of an edge (x, y, unit direction, length: f64). */
const EDGE: i32 = 40;
/** Bytes of a form (box; low and high; of either rail where it begins and its step, under 0 for none: f64). */
const FORM: i32 = 80;

export let items: i32 = 0;
export let forms: i32 = 0;
/** 64-bit words that hold a bit of every item: always even, measure.ts takes two at a time. */
export let words: i32 = 0;
/** Mean piece size. */
export let scale: f64 = 0;
/** Depth is measured as if every no-fit region were grown by this, so that a layout found free is free by more than rounding. */
export let clear: f64 = 0;
/** Of the strip. */
export let length: f64 = 0;

/** Of every item: x, y (f64) and form (i32). */
export let placeX: usize = 0;
export let placeY: usize = 0;
export let placeForm: usize = 0;
/** f32, items × items; nothing weighs against itself. */
export let weights: usize = 0;
let fields: usize = 0;
/** f32, `NODES` × `NODES` a field. */
export let nodes: usize = 0;
/** i32: where each cell's edges begin in the list, one more than cells; the list; the cells' signs (i8). See ../depth-field.ts. */
export let cellStart: usize = 0;
export let cellEdges: usize = 0;
export let cellSign: usize = 0;
let edges: usize = 0;
/** Of fixed form · forms + moving form: the field (i32), and 1, or −1 where it is read turned by half (i8). */
export let pairField: usize = 0;
export let pairSign: usize = 0;
let formTable: usize = 0;
/** i32: where each item's forms begin in the list, one more than items; the list. */
export let itemStart: usize = 0;
export let itemForm: usize = 0;
/** `HELD` a form, NaN where none is known yet (f64), and which is overwritten next (i32 a form). */
export let hollowX: usize = 0;
export let hollowY: usize = 0;
export let hollowNext: usize = 0;
/** See table.ts. */
export let tables: usize = 0;
/** Items a spot reaches (i32), room for all. */
export let met: usize = 0;
/** What an exact measure met, see measure.ts: room for all. */
export let hits: usize = 0;
/** The place found: x, y, cost (f64), form (i32). */
export let found: usize = 0;
/** Four words, see random.ts. */
export let random: usize = 0;

/** Number k from an address on. */
export function f64At(from: usize, k: i32): f64 {
  return load<f64>(from + (k << 3));
}
export function i32At(from: usize, k: i32): i32 {
  return load<i32>(from + (k << 2));
}
export function fieldAt(k: i32): usize {
  return fields + k * FIELD;
}
export function edgeAt(k: i32): usize {
  return edges + k * EDGE;
}
export function formAt(k: i32): usize {
  return formTable + k * FORM;
}

/** @param header where the host has written the numbers and addresses, i32, in the order in which they are read here. */
export function open(header: usize, meanSize: f64, clearance: f64): void {
  scale = meanSize;
  clear = clearance;
  items = i32At(header, 0);
  forms = i32At(header, 1);
  words = i32At(header, 2);
  placeX = i32At(header, 3);
  placeY = i32At(header, 4);
  placeForm = i32At(header, 5);
  weights = i32At(header, 6);
  fields = i32At(header, 7);
  nodes = i32At(header, 8);
  cellStart = i32At(header, 9);
  cellEdges = i32At(header, 10);
  cellSign = i32At(header, 11);
  edges = i32At(header, 12);
  pairField = i32At(header, 13);
  pairSign = i32At(header, 14);
  formTable = i32At(header, 15);
  itemStart = i32At(header, 16);
  itemForm = i32At(header, 17);
  hollowX = i32At(header, 18);
  hollowY = i32At(header, 19);
  hollowNext = i32At(header, 20);
  tables = i32At(header, 21);
  met = i32At(header, 22);
  hits = i32At(header, 23);
  found = i32At(header, 24);
  random = i32At(header, 25);
}

export function setLength(to: f64): void {
  length = to;
}
