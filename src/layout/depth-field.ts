import type { NoFit } from './no-fit.ts';

/** Cells along each axis of a field. 32 keeps a coat's thousand pairs within a few megabytes. */
export const CELLS = 32;
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

/** Nearest distance from a point to edge `e` of a packed list. */
function edgeDistance(edges: Float64Array, e: number, x: number, y: number): number {
  const ux = edges[5 * e + 2]!;
  const uy = edges[5 * e + 3]!;
  const dx = x - edges[5 * e]!;
  const dy = y - edges[5 * e + 1]!;
  const along = Math.min(Math.max(dx * ux + dy * uy, 0), edges[5 * e + 4]!);
  return Math.sqrt((dx - along * ux) ** 2 + (dy - along * uy) ** 2);
}

/** Even-odd rule on the region's closed outlines; ends shared by two edges are the same numbers, so no ray slips through. */
function insideEdges(edges: Float64Array, x: number, y: number): boolean {
  let inside = false;
  for (let e = 0; e < edges.length; e += 4) {
    const y0 = edges[e + 1]!;
    const y1 = edges[e + 3]!;
    if (y0 > y !== y1 > y && x < edges[e]! + ((y - y0) / (y1 - y0)) * (edges[e + 2]! - edges[e]!))
      inside = !inside;
  }
  return inside;
}

function markReflex(edges: Float64Array, reflex: Uint8Array, first: number, near: number): void {
  const m = edges.length / 4;
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
      reflex[first + a] = reflex[first + a]! | 2;
      reflex[first + b] = reflex[first + b]! | 1;
    }
  }
}

/** Packs the fields of the regions given, in their order. */
export function depthFields(regions: readonly NoFit[]): DepthFields {
  const count = regions.length;
  const perNodes = NODES * NODES;
  const perCells = CELLS * CELLS;
  const x0 = new Float64Array(count);
  const y0 = new Float64Array(count);
  const wide = new Float64Array(count);
  const high = new Float64Array(count);
  const starts = new Int32Array(count + 1);
  const kx = new Float64Array(count);
  const ky = new Float64Array(count);
  const nodes = new Float32Array(count * perNodes);
  const cellStart = new Int32Array(count * perCells + 1);
  const cellSign = new Int8Array(count * perCells);
  const lists: number[] = [];
  const edges = new Float64Array((regions.reduce((n, r) => n + r.edges.length, 0) / 4) * 5);
  const reflex = new Uint8Array(edges.length / 5);
  let first = 0;
  regions.forEach((region, k) => {
    const m = region.edges.length / 4;
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let e = 0; e < m; e++) {
      const [ax, ay, bx, by] = region.edges.subarray(4 * e, 4 * e + 4) as unknown as [
        number,
        number,
        number,
        number,
      ];
      const len = Math.hypot(bx - ax, by - ay);
      edges.set([ax, ay, (bx - ax) / len, (by - ay) / len, len], 5 * (first + e));
      minX = Math.min(minX, ax, bx);
      minY = Math.min(minY, ay, by);
      maxX = Math.max(maxX, ax, bx);
      maxY = Math.max(maxY, ay, by);
    }
    markReflex(region.edges, reflex, first, Math.max(maxX - minX, maxY - minY) * 1e-7);
    starts[k] = first;
    wide[k] = maxX - minX;
    high[k] = maxY - minY;
    x0[k] = minX;
    y0[k] = minY;
    const hx = (maxX - minX) / CELLS;
    const hy = (maxY - minY) / CELLS;
    kx[k] = 1 / hx;
    ky[k] = 1 / hy;
    for (let iy = 0; iy < NODES; iy++) {
      for (let ix = 0; ix < NODES; ix++) {
        const x = minX + ix * hx;
        const y = minY + iy * hy;
        let near = Infinity;
        for (let e = first; e < first + m; e++) near = Math.min(near, edgeDistance(edges, e, x, y));
        nodes[k * perNodes + iy * NODES + ix] = insideEdges(region.edges, x, y) ? near : -near;
      }
    }
    const half = Math.hypot(hx, hy) / 2;
    const far = new Float64Array(m);
    for (let iy = 0; iy < CELLS; iy++) {
      for (let ix = 0; ix < CELLS; ix++) {
        const x = minX + (ix + 0.5) * hx;
        const y = minY + (iy + 0.5) * hy;
        let near = Infinity;
        for (let e = 0; e < m; e++) near = Math.min(near, (far[e] = edgeDistance(edges, first + e, x, y)));
        const cell = k * perCells + iy * CELLS + ix;
        cellStart[cell] = lists.length;
        if (near > half * 1.000001) cellSign[cell] = insideEdges(region.edges, x, y) ? 1 : -1;
        for (let e = 0; e < m; e++) if (far[e]! <= near + 2.000001 * half) lists.push(first + e);
      }
    }
    first += m;
  });
  cellStart[count * perCells] = lists.length;
  starts[count] = first;
  return {
    count,
    x0,
    y0,
    wide,
    high,
    first: starts,
    kx,
    ky,
    nodes,
    cellStart,
    cellSign,
    cellEdges: Int32Array.from(lists),
    reflex,
    edges,
  };
}

/** What `exactDepth` found besides the depth: the nearest point of the outline less the query point. */
export const way = new Float64Array(2);

/** Exact signed depth of (x, y) in field k; −Infinity beyond its box. `way` leads to the nearest outline point. */
export function exactDepth(f: DepthFields, k: number, x: number, y: number): number {
  const u = (x - f.x0[k]!) * f.kx[k]!;
  const v = (y - f.y0[k]!) * f.ky[k]!;
  if (!(u > 0 && v > 0 && u < CELLS && v < CELLS)) return -Infinity;
  const cell = k * CELLS * CELLS + (v | 0) * CELLS + (u | 0);
  const sign = f.cellSign[cell]!;
  const edges = f.edges;
  let best = Infinity;
  let bestLean = 0;
  let left = true;
  let wx = 0;
  let wy = 0;
  for (let i = f.cellStart[cell]!, end = f.cellStart[cell + 1]!; i < end; i++) {
    const e = 5 * f.cellEdges[i]!;
    const ux = edges[e + 2]!;
    const uy = edges[e + 3]!;
    const len = edges[e + 4]!;
    const dx = x - edges[e]!;
    const dy = y - edges[e + 1]!;
    const t = dx * ux + dy * uy;
    const along = t < 0 ? 0 : t > len ? len : t;
    const ox = dx - along * ux;
    const oy = dy - along * uy;
    const d = ox * ox + oy * oy;
    if (d > best * 1.0000001 + 1e-300) continue;
    // At a shared corner both edges are equally near; the one seen more squarely tells the side.
    const across = dy * ux - dx * uy;
    const lean = across * across;
    if (d >= best * 0.9999999 && lean <= bestLean) continue;
    best = d < best ? d : best;
    bestLean = lean;
    left = across >= 0;
    wx = -ox;
    wy = -oy;
  }
  way[0] = wx;
  way[1] = wy;
  const depth = Math.sqrt(best);
  return sign > 0 || (sign === 0 && left) ? depth : -depth;
}
