import type { Flat } from './flat.ts';
import { flatArea, flatBox } from './flat.ts';

/** Many convex polygons, packed: boxes and sides as inward lines nx · x + ny · y ≥ c, the largest polygon first. */
export interface ConvexSums {
  readonly boxes: Float64Array;
  /** First side of each; one more than polygons. */
  readonly first: Int32Array;
  /** Three numbers a side: unit normal inward, distance. */
  readonly sides: Float64Array;
  /** Largest extent of any of them. */
  readonly size: number;
}

const lowest = (p: Flat): number => {
  let k = 0;
  for (let i = 2; i < p.length; i += 2) {
    if (p[i + 1]! < p[k + 1]! || (p[i + 1]! === p[k + 1]! && p[i]! < p[k]!)) k = i;
  }
  return k;
};

/** Minkowski sum of two convex counter-clockwise polygons by merging their edges by direction. */
function convexSum(a: Flat, b: Flat): Flat {
  const na = a.length;
  const nb = b.length;
  const ka = lowest(a);
  const kb = lowest(b);
  const out = new Float64Array(na + nb);
  let used = 0;
  let i = 0;
  let j = 0;
  while (i < na || j < nb) {
    const u = (ka + i) % na;
    const v = (kb + j) % nb;
    const u1 = (u + 2) % na;
    const v1 = (v + 2) % nb;
    out[used++] = a[u]! + b[v]!;
    out[used++] = a[u + 1]! + b[v + 1]!;
    const cross = (a[u1]! - a[u]!) * (b[v1 + 1]! - b[v + 1]!) - (a[u1 + 1]! - a[u + 1]!) * (b[v1]! - b[v]!);
    if (j >= nb || (i < na && cross > 0)) i += 2;
    else if (i >= na || cross < 0) j += 2;
    else {
      i += 2;
      j += 2;
    }
  }
  return out.subarray(0, used);
}

/** The sums of every part of one shape with every part of the other. */
export function convexSums(a: readonly Flat[], b: readonly Flat[]): ConvexSums {
  const parts = a.flatMap((p) => b.map((q) => convexSum(p, q)));
  const areas = parts.map(flatArea);
  const order = parts.map((_, k) => k).sort((p, q) => areas[q]! - areas[p]! || p - q);
  const boxes = new Float64Array(4 * parts.length);
  const first = new Int32Array(parts.length + 1);
  const sides = new Float64Array(3 * parts.reduce((n, p) => n + p.length / 2, 0));
  let size = 0;
  let side = 0;
  order.forEach((k, at) => {
    const part = parts[k]!;
    const box = flatBox(part);
    boxes.set(box, 4 * at);
    size = Math.max(size, box[2] - box[0], box[3] - box[1]);
    first[at] = side;
    for (let i = 0; i < part.length; i += 2) {
      const n = (i + 2) % part.length;
      const ex = part[n]! - part[i]!;
      const ey = part[n + 1]! - part[i + 1]!;
      const len = Math.hypot(ex, ey);
      if (len === 0) continue;
      sides[3 * side] = -ey / len;
      sides[3 * side + 1] = ex / len;
      sides[3 * side + 2] = (ex * part[i + 1]! - ey * part[i]!) / len;
      side++;
    }
  });
  first[parts.length] = side;
  return { boxes, first, sides, size };
}

/**
 * Which shares of the edge from (px, py) by (dx, dy) lie inside some polygon, sorted by start; null where all of it does.
 * An edge along a side, polygon on its left, is not inside that one; with the polygon on its right it is, as a slit has no room.
 */
export function coveredShare(
  sums: ConvexSums,
  px: number,
  py: number,
  dx: number,
  dy: number,
  len: number,
  same: number,
): [number, number][] | null {
  const { boxes, first, sides } = sums;
  const x0 = Math.min(px, px + dx);
  const x1 = Math.max(px, px + dx);
  const y0 = Math.min(py, py + dy);
  const y1 = Math.max(py, py + dy);
  const spans: [number, number][] = [];
  const count = first.length - 1;
  search: for (let m = 0; m < count; m++) {
    if (x1 < boxes[4 * m]! || x0 > boxes[4 * m + 2]! || y1 < boxes[4 * m + 1]! || y0 > boxes[4 * m + 3]!)
      continue;
    let from = 0;
    let to = 1;
    for (let s = 3 * first[m]!, end = 3 * first[m + 1]!; s < end; s += 3) {
      // Signed distances of the edge's two ends to the left of this side.
      const d0 = sides[s]! * px + sides[s + 1]! * py - sides[s + 2]!;
      const d1 = d0 + sides[s]! * dx + sides[s + 1]! * dy;
      if (d0 > same && d1 > same) continue;
      if (d0 <= same && d1 <= same) {
        if (d0 < -same || d1 < -same) continue search;
        // Along the side: its direction is its normal turned back by a quarter.
        if (sides[s + 1]! * dx - sides[s]! * dy > 0) continue search;
        continue;
      }
      if (d0 < 0 && d1 > 0) from = Math.max(from, d0 / (d0 - d1));
      else if (d0 > 0 && d1 < 0) to = Math.min(to, d0 / (d0 - d1));
      if ((to - from) * len <= same) continue search;
    }
    if (from === 0 && to === 1) return null;
    spans.push([from, to]);
  }
  return spans.sort((u, v) => u[0] - v[0] || u[1] - v[1]);
}
