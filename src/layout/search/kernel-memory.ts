import { KERNEL_BYTES } from './kernel-bytes.ts';
import type { Rail } from './rail.ts';
import type { Strip } from './strip.ts';

/** What kernel/index.ts offers. Numbers and truth values cross as numbers. */
interface KernelCalls {
  readonly HELD: WebAssembly.Global;
  readonly open: (header: number, meanSize: number, clearance: number) => void;
  readonly setLength: (to: number) => void;
  readonly moved: (i: number) => void;
  readonly allMoved: () => void;
  readonly tableBytes: (items: number, words: number) => number;
  readonly seek: (i: number, wide: number, near: number, walked: number) => number;
  readonly seekBeside: (i: number, cx: number, cy: number) => number;
  readonly pairDepth: (i: number, j: number) => number;
  readonly next: () => number;
  /** What a move is made of, each by itself: only tests ask for it. */
  readonly gather: (i: number, f: number) => number;
  readonly coarse: (x: number, y: number) => number;
  readonly exact: (x: number, y: number, bound: number) => number;
  readonly exactDepth: (field: number, x: number, y: number) => number;
  readonly remember: (f: number, x: number, y: number) => void;
}

/** The kernel with a strip laid out in its memory: both see the same numbers. */
export interface KernelMemory {
  readonly calls: KernelCalls;
  readonly placeX: Float64Array;
  readonly placeY: Float64Array;
  readonly placeForm: Int32Array;
  readonly weights: Float32Array;
  /** Hollows held per form. */
  readonly held: number;
  readonly hollowX: Float64Array;
  readonly hollowY: Float64Array;
  readonly hollowNext: Int32Array;
  /** x, y, cost. */
  readonly found: Float64Array;
  readonly foundForm: Int32Array;
  readonly random: Int32Array;
}

/** The kernel's own numbers stand below this; the header begins here. */
const FIRST = 4096;
/** Everything begins at a multiple of this: a line of the processor's cache. */
const LINE = 64;
const PAGE = 65536;
/** Rows of nodes are read two at a time, the last of all a little beyond its end. */
const BEYOND = 512;

/** Compiled once a thread. */
let compiled: WebAssembly.Module | null = null;

/**
 * Loads the kernel and lays the strip out in its memory.
 * @param clear see kernel/memory.ts.
 */
export function kernelMemory(strip: Strip, clear: number): KernelMemory {
  compiled ??= new WebAssembly.Module(Uint8Array.from(atob(KERNEL_BYTES), (c) => c.charCodeAt(0)));
  const memory = new WebAssembly.Memory({ initial: 1 });
  const calls = new WebAssembly.Instance(compiled, { env: { memory } }).exports as unknown as KernelCalls;
  const held = calls.HELD.value as number;
  const n = strip.itemShape.length;
  const F = strip.forms.length;
  const words = 2 * Math.ceil(n / 128);
  const { fields } = strip;
  const listed = strip.itemForms.flat();

  let end = FIRST;
  const take = (bytes: number): number => {
    const at = end;
    end += Math.ceil(bytes / LINE) * LINE;
    return at;
  };
  const header = take(26 * 4);
  // In the order in which kernel/memory.ts reads them, and with its numbers of bytes.
  const at = {
    placeX: take(8 * n),
    placeY: take(8 * n),
    placeForm: take(4 * n),
    weights: take(4 * n * n),
    fields: take(48 * fields.count),
    nodes: take(fields.nodes.byteLength + BEYOND),
    cellStart: take(fields.cellStart.byteLength),
    cellEdges: take(fields.cellEdges.byteLength),
    cellSign: take(fields.cellSign.byteLength),
    edges: take(fields.edges.byteLength),
    pairField: take(strip.pairField.byteLength),
    pairSign: take(strip.pairSign.byteLength),
    forms: take(80 * F),
    itemStart: take(4 * (n + 1)),
    itemForm: take(4 * listed.length),
    hollowX: take(8 * held * F),
    hollowY: take(8 * held * F),
    hollowNext: take(4 * F),
    tables: take(calls.tableBytes(n, words) * F),
    met: take(4 * n),
    hits: take(32 * n),
    found: take(32),
    random: take(16),
  };
  memory.grow(Math.max(0, Math.ceil(end / PAGE) - 1));

  const f64 = (from: number, count: number): Float64Array => new Float64Array(memory.buffer, from, count);
  const i32 = (from: number, count: number): Int32Array => new Int32Array(memory.buffer, from, count);
  i32(header, 26).set([n, F, words, ...Object.values(at)]);
  f64(at.fields, 6 * fields.count).set(
    Array.from({ length: fields.count }, (_, k) => [
      fields.x0[k]!,
      fields.y0[k]!,
      fields.wide[k]!,
      fields.high[k]!,
      fields.kx[k]!,
      fields.ky[k]!,
    ]).flat(),
  );
  new Float32Array(memory.buffer, at.nodes, fields.nodes.length).set(fields.nodes);
  i32(at.cellStart, fields.cellStart.length).set(fields.cellStart);
  i32(at.cellEdges, fields.cellEdges.length).set(fields.cellEdges);
  new Int8Array(memory.buffer, at.cellSign, fields.cellSign.length).set(fields.cellSign);
  f64(at.edges, fields.edges.length).set(fields.edges);
  i32(at.pairField, F * F).set(strip.pairField);
  new Int8Array(memory.buffer, at.pairSign, F * F).set(strip.pairSign);
  f64(at.forms, 10 * F).set(
    strip.forms.flatMap((f) => [...f.box, f.low, f.high, ...railNumbers(f.railX), ...railNumbers(f.railY)]),
  );
  let start = 0;
  i32(at.itemStart, n + 1).set([0, ...strip.itemForms.map((f) => (start += f.length))]);
  i32(at.itemForm, listed.length).set(listed);
  calls.open(header, strip.scale, clear);
  return {
    calls,
    placeX: f64(at.placeX, n),
    placeY: f64(at.placeY, n),
    placeForm: i32(at.placeForm, n),
    weights: new Float32Array(memory.buffer, at.weights, n * n),
    held,
    hollowX: f64(at.hollowX, held * F),
    hollowY: f64(at.hollowY, held * F),
    hollowNext: i32(at.hollowNext, F),
    found: f64(at.found, 3),
    foundForm: i32(at.found + 24, 1),
    random: i32(at.random, 4),
  };
}

/** Where it begins and its step; a step under 0 is no rail. */
const railNumbers = (rail: Rail | null): [number, number] =>
  rail ? [rail.at, Math.max(0, rail.step)] : [0, -1];
