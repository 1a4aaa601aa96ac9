import type { NoFit } from './no-fit.ts';

/** Cells along each axis of a field. 32 keeps a coat's thousand pairs within a few megabytes. */
const CELLS = 32;
const NODES = CELLS + 1;

/**
 * Signed penetration depth of many no-fit regions, packed for the search: positive inside (how far to move to be free), negative outside.
 * A coarse table answers in a few operations; each cell also lists the edges that can be nearest to any point of it, for the exact answer.
 */
export interface DepthFields {
  readonly count: number;
  readonly x0: Float64Array;
  readonly y0: Float64Array;
  /** Width and height of each region's box. */
  readonly wide: Float64Array;
  readonly high: Float64Array;
  /** First edge of each region; one more than regions. */
  readonly first: Int32Array;
  /** Cells per unit of length, each axis. */
  readonly kx: Float64Array;
  readonly ky: Float64Array;
  readonly nodes: Float32Array;
  /** Start of each cell's edge list; one more than cells. */
  readonly cellStart: Int32Array;
  readonly cellEdges: Int32Array;
  /** 1 wholly inside, −1 wholly outside, 0 crossed by the outline. */
  readonly cellSign: Int8Array;
  /** Bit 1: the region turns back (reflex) where the edge starts; bit 2: where it ends. Beyond such an end the edge's line still walls in. */
  readonly reflex: Uint8Array;
  /** Five numbers an edge: x, y, unit direction, length. */
  readonly edges: Float64Array;
}

/** Cells along each side of a block: what can be nearest to any point of a block is found once for its cells. */
const BLOCK = 8;

/** The depth field of one region, before it is packed with others. */
export interface DepthField {
  readonly box: readonly [number, number, number, number];
  /** Five numbers an edge: x, y, unit direction, length. */
  readonly edges: Float64Array;
  readonly reflex: Uint8Array;
  readonly nodes: Float32Array;
  readonly cellStart: Int32Array;
  readonly cellEdges: readonly number[];
  readonly cellSign: Int8Array;
}

/** Squared distance from a point to the nearest of the edges listed from `from` up to `to`; each one's own is left in `far`. */
function nearestSquared(
  edges: Float64Array,
  list: Int32Array,
  from: number,
  to: number,
  x: number,
  y: number,
  far: Float64Array,
): number {
  let least = Infinity;
  for (let q = from; q < to; q++) {
    const e = list[q]!;
    const ux = edges[5 * e + 2]!;
    const uy = edges[5 * e + 3]!;
    const dx = x - edges[5 * e]!;
    const dy = y - edges[5 * e + 1]!;
    const t = dx * ux + dy * uy;
    const len = edges[5 * e + 4]!;
    const along = t < 0 ? 0 : t > len ? len : t;
    const ox = dx - along * ux;
    const oy = dy - along * uy;
    const d = ox * ox + oy * oy;
    far[e] = d;
    if (d < least) least = d;
  }
  return least;
}

/** Where the line at height y crosses the region's outlines, from left to right; ends shared by two edges are the same numbers, so no ray slips through. */
function crossings(edges: Float64Array, y: number): number[] {
  const out: number[] = [];
  for (let e = 0; e < edges.length; e += 4) {
    const y0 = edges[e + 1]!;
    const y1 = edges[e + 3]!;
    if (y0 > y !== y1 > y) out.push(edges[e]! + ((y - y0) / (y1 - y0)) * (edges[e + 2]! - edges[e]!));
  }
  return out.sort((p, q) => p - q);
}

/** Even-odd rule for `count` points from x on by `step`, all at height y. */
function insideRow(edges: Float64Array, x: number, step: number, count: number, y: number): boolean[] {
  const at = crossings(edges, y);
  const inside: boolean[] = [];
  let passed = 0;
  for (let i = 0; i < count; i++) {
    while (passed < at.length && at[passed]! <= x + i * step) passed++;
    inside.push(passed % 2 === 1);
  }
  return inside;
}

/** Marks the ends at which the region turns back; `near` is how far apart two ends may be and still be one corner. */
function reflexEnds(edges: Float64Array, near: number): Uint8Array {
  const m = edges.length / 4;
  const reflex = new Uint8Array(m);
  for (let a = 0; a < m; a++) {
    for (let b = 0; b < m; b++) {
      if (
        Math.abs(edges[4 * a + 2]! - edges[4 * b]!) > near ||
        Math.abs(edges[4 * a + 3]! - edges[4 * b + 1]!) > near
      )
        continue;
      const ax = edges[4 * a + 2]! - edges[4 * a]!;
      const ay = edges[4 * a + 3]! - edges[4 * a + 1]!;
      const bx = edges[4 * b + 2]! - edges[4 * b]!;
      const by = edges[4 * b + 3]! - edges[4 * b + 1]!;
      if (ax * by - ay * bx >= 0) continue;
      reflex[a] = reflex[a]! | 2;
      reflex[b] = reflex[b]! | 1;
    }
  }
  return reflex;
}

/** The field of one region. */
export function depthField(region: NoFit): DepthField {
  const m = region.edges.length / 4;
  const edges = new Float64Array(5 * m);
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let e = 0; e < m; e++) {
    const ax = region.edges[4 * e]!;
    const ay = region.edges[4 * e + 1]!;
    const bx = region.edges[4 * e + 2]!;
    const by = region.edges[4 * e + 3]!;
    const len = Math.hypot(bx - ax, by - ay);
    edges.set([ax, ay, (bx - ax) / len, (by - ay) / len, len], 5 * e);
    minX = Math.min(minX, ax, bx);
    minY = Math.min(minY, ay, by);
    maxX = Math.max(maxX, ax, bx);
    maxY = Math.max(maxY, ay, by);
  }
  const hx = (maxX - minX) / CELLS;
  const hy = (maxY - minY) / CELLS;
  const half = Math.hypot(hx, hy) / 2;
  const nodes = new Float32Array(NODES * NODES);
  const cellStart = new Int32Array(CELLS * CELLS + 1);
  const cellSign = new Int8Array(CELLS * CELLS);
  const far = new Float64Array(m);
  const all = Int32Array.from({ length: m }, (_, e) => e);
  const blocks = CELLS / BLOCK;
  /** Which edges can be nearest to a point of each block: block k's are `near` from `nearStart[k]` on. */
  const near = new Int32Array(blocks * blocks * m);
  const nearStart = new Int32Array(blocks * blocks + 1);
  let listed = 0;
  for (let k = 0; k < blocks * blocks; k++) {
    const x = minX + ((k % blocks) + 0.5) * BLOCK * hx;
    const y = minY + (Math.floor(k / blocks) + 0.5) * BLOCK * hy;
    const most = Math.sqrt(nearestSquared(edges, all, 0, m, x, y, far)) + 2.000001 * half * BLOCK;
    nearStart[k] = listed;
    for (let e = 0; e < m; e++) if (far[e]! <= most * most) near[listed++] = e;
  }
  nearStart[blocks * blocks] = listed;
  for (let iy = 0; iy < NODES; iy++) {
    const y = minY + iy * hy;
    const inside = insideRow(region.edges, minX, hx, NODES, y);
    const row = Math.min(blocks - 1, (iy / BLOCK) | 0) * blocks;
    for (let ix = 0; ix < NODES; ix++) {
      const k = row + Math.min(blocks - 1, (ix / BLOCK) | 0);
      const x = minX + ix * hx;
      const d = Math.sqrt(nearestSquared(edges, near, nearStart[k]!, nearStart[k + 1]!, x, y, far));
      nodes[iy * NODES + ix] = inside[ix] ? d : -d;
    }
  }
  const cellEdges: number[] = [];
  for (let iy = 0; iy < CELLS; iy++) {
    const y = minY + (iy + 0.5) * hy;
    const inside = insideRow(region.edges, minX + hx / 2, hx, CELLS, y);
    for (let ix = 0; ix < CELLS; ix++) {
      const k = ((iy / BLOCK) | 0) * blocks + ((ix / BLOCK) | 0);
      const from = nearStart[k]!;
      const to = nearStart[k + 1]!;
      const d = Math.sqrt(nearestSquared(edges, near, from, to, minX + (ix + 0.5) * hx, y, far));
      const cell = iy * CELLS + ix;
      cellStart[cell] = cellEdges.length;
      if (d > half * 1.000001) cellSign[cell] = inside[ix] ? 1 : -1;
      const most = (d + 2.000001 * half) ** 2;
      for (let q = from; q < to; q++) if (far[near[q]!]! <= most) cellEdges.push(near[q]!);
    }
  }
  cellStart[CELLS * CELLS] = cellEdges.length;
  return {
    box: [minX, minY, maxX, maxY],
    edges,
    reflex: reflexEnds(region.edges, Math.max(maxX - minX, maxY - minY) * 1e-7),
    nodes,
    cellStart,
    cellEdges,
    cellSign,
  };
}

/** The field of the region's mirror image, x → −x. */
export function mirroredField(f: DepthField): DepthField {
  const edges = new Float64Array(f.edges.length);
  for (let e = 0; e < edges.length; e += 5) {
    // Mirrored, an edge runs the other way, so that the region stays on its left.
    const ux = f.edges[e + 2]!;
    const uy = f.edges[e + 3]!;
    const len = f.edges[e + 4]!;
    edges[e] = -(f.edges[e]! + len * ux);
    edges[e + 1] = f.edges[e + 1]! + len * uy;
    edges[e + 2] = ux;
    edges[e + 3] = -uy;
    edges[e + 4] = len;
  }
  const nodes = new Float32Array(f.nodes.length);
  for (let row = 0; row < nodes.length; row += NODES)
    for (let i = 0; i < NODES; i++) nodes[row + i] = f.nodes[row + NODES - 1 - i]!;
  const cellStart = new Int32Array(f.cellStart.length);
  const cellSign = new Int8Array(f.cellSign.length);
  const cellEdges: number[] = [];
  for (let row = 0; row < cellSign.length; row += CELLS) {
    for (let i = 0; i < CELLS; i++) {
      const from = row + CELLS - 1 - i;
      cellStart[row + i] = cellEdges.length;
      cellSign[row + i] = f.cellSign[from]!;
      for (let q = f.cellStart[from]!; q < f.cellStart[from + 1]!; q++) cellEdges.push(f.cellEdges[q]!);
    }
  }
  cellStart[cellSign.length] = cellEdges.length;
  return {
    box: [-f.box[2], f.box[1], -f.box[0], f.box[3]],
    edges,
    reflex: f.reflex.map((r) => ((r & 1) << 1) | (r >> 1)),
    nodes,
    cellStart,
    cellEdges,
    cellSign,
  };
}

/** Packs fields one after another, in their order. */
export function packFields(fields: readonly DepthField[]): DepthFields {
  const count = fields.length;
  const cells = CELLS * CELLS;
  const sum = (of: (f: DepthField) => number): number => fields.reduce((n, f) => n + of(f), 0);
  const first = new Int32Array(count + 1);
  const edges = new Float64Array(sum((f) => f.edges.length));
  const reflex = new Uint8Array(edges.length / 5);
  const nodes = new Float32Array(count * NODES * NODES);
  const cellStart = new Int32Array(count * cells + 1);
  const cellEdges = new Int32Array(sum((f) => f.cellEdges.length));
  const cellSign = new Int8Array(count * cells);
  let edge = 0;
  let listed = 0;
  fields.forEach((f, k) => {
    first[k] = edge;
    edges.set(f.edges, 5 * edge);
    reflex.set(f.reflex, edge);
    nodes.set(f.nodes, k * NODES * NODES);
    cellSign.set(f.cellSign, k * cells);
    for (let c = 0; c < cells; c++) cellStart[k * cells + c] = listed + f.cellStart[c]!;
    for (const e of f.cellEdges) cellEdges[listed++] = edge + e;
    edge += f.reflex.length;
  });
  first[count] = edge;
  cellStart[count * cells] = listed;
  return {
    count,
    x0: Float64Array.from(fields, (f) => f.box[0]),
    y0: Float64Array.from(fields, (f) => f.box[1]),
    wide: Float64Array.from(fields, (f) => f.box[2] - f.box[0]),
    high: Float64Array.from(fields, (f) => f.box[3] - f.box[1]),
    first,
    kx: Float64Array.from(fields, (f) => CELLS / (f.box[2] - f.box[0])),
    ky: Float64Array.from(fields, (f) => CELLS / (f.box[3] - f.box[1])),
    nodes,
    cellStart,
    cellSign,
    cellEdges,
    reflex,
    edges,
  };
}
