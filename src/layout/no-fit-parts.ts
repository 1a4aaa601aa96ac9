import type { Flat } from './flat.ts';
import { flatArea, flatBox } from './flat.ts';
import type { NoFit } from './no-fit.ts';

/** Minkowski sum of two convex counter-clockwise polygons by merging their edges by direction. */
function convexSum(a: Flat, b: Flat): Flat {
  const lowest = (p: Flat): number => {
    let k = 0;
    for (let i = 2; i < p.length; i += 2) {
      if (p[i + 1]! < p[k + 1]! || (p[i + 1]! === p[k + 1]! && p[i]! < p[k]!)) k = i;
    }
    return k;
  };
  const na = a.length;
  const nb = b.length;
  const ka = lowest(a);
  const kb = lowest(b);
  const out: number[] = [];
  let i = 0;
  let j = 0;
  while (i < na || j < nb) {
    const ax = a[(ka + i) % na]!;
    const ay = a[((ka + i) % na) + 1]!;
    const bx = b[(kb + j) % nb]!;
    const by = b[((kb + j) % nb) + 1]!;
    out.push(ax + bx, ay + by);
    const ex = a[(ka + i + 2) % na]! - ax;
    const ey = a[((ka + i + 2) % na) + 1]! - ay;
    const fx = b[(kb + j + 2) % nb]! - bx;
    const fy = b[((kb + j + 2) % nb) + 1]! - by;
    const cross = ex * fy - ey * fx;
    if (j >= nb || (i < na && cross > 0)) i += 2;
    else if (i >= na || cross < 0) j += 2;
    else {
      i += 2;
      j += 2;
    }
  }
  return Float64Array.from(out);
}

const negated = (p: Flat): Flat => p.map((v) => -v);

/**
 * No-fit region of fixed parts `a` against moving parts `b` (both convex decompositions). Each edge of each convex sum is
 * cut down to what lies in no other sum's inside; what is left is the outline of the union, holes included.
 * An exact-fit slit (zero width) is dropped: no cutter could follow it.
 */
export function noFitOfParts(a: readonly Flat[], b: readonly Flat[]): NoFit {
  const minus = b.map(negated);
  // Large sums first: most edges lie wholly inside one of them, and are done with at once.
  const parts = a.flatMap((p) => minus.map((q) => convexSum(p, q))).sort((p, q) => flatArea(q) - flatArea(p));
  const boxes = parts.map(flatBox);
  let size = 0;
  for (const [x0, y0, x1, y1] of boxes) size = Math.max(size, x1 - x0, y1 - y0);
  // Distances below this are one and the same line; a billionth of the region's size is far above rounding, far below a thread.
  const same = size * 1e-10;
  const found: number[] = [];
  parts.forEach((part, k) => {
    for (let i = 0; i < part.length; i += 2) {
      const px = part[i]!;
      const py = part[i + 1]!;
      const n = (i + 2) % part.length;
      const dx = part[n]! - px;
      const dy = part[n + 1]! - py;
      const len = Math.hypot(dx, dy);
      if (len <= same) continue;
      const covered: [number, number][] = [];
      for (let m = 0; m < parts.length; m++) {
        if (m === k) continue;
        const [bx0, by0, bx1, by1] = boxes[m]!;
        if (Math.max(px, px + dx) < bx0 || Math.min(px, px + dx) > bx1) continue;
        if (Math.max(py, py + dy) < by0 || Math.min(py, py + dy) > by1) continue;
        const span = inside(parts[m]!, px, py, dx, dy, len, same, m < k);
        if (!span) continue;
        covered.push(span);
        if (span[0] === 0 && span[1] === 1) break;
      }
      covered.sort((u, v) => u[0] - v[0] || u[1] - v[1]);
      let at = 0;
      for (const [s, e] of [...covered, [1, 1] as [number, number]]) {
        if ((s - at) * len > size * 1e-9) {
          found.push(px + dx * at, py + dy * at, px + dx * s, py + dy * s);
        }
        at = Math.max(at, e);
      }
    }
  });
  return { edges: snapped(Float64Array.from(found), size * 1e-8) };
}

/** The share of the edge that lies inside the convex part, or null. A common edge counts as inside for all but its first owner. */
function inside(
  part: Flat,
  px: number,
  py: number,
  dx: number,
  dy: number,
  len: number,
  same: number,
  earlier: boolean,
): [number, number] | null {
  let from = 0;
  let to = 1;
  for (let i = 0; i < part.length; i += 2) {
    const n = (i + 2) % part.length;
    const ex = part[n]! - part[i]!;
    const ey = part[n + 1]! - part[i + 1]!;
    const e = Math.hypot(ex, ey);
    if (e <= same) continue;
    // Signed distances of the edge's two ends to the left of this side.
    const d0 = (ex * (py - part[i + 1]!) - ey * (px - part[i]!)) / e;
    const d1 = d0 + (ex * dy - ey * dx) / e;
    if (Math.abs(d0) <= same && Math.abs(d1) <= same) {
      if (ex * dx + ey * dy > 0 && !earlier) return null;
      continue;
    }
    if (d0 <= same && d1 <= same) return null;
    if (d0 < 0 && d1 > 0) from = Math.max(from, d0 / (d0 - d1));
    else if (d0 > 0 && d1 < 0) to = Math.min(to, d0 / (d0 - d1));
  }
  return (to - from) * len > same ? [from, to] : null;
}

/** Ends that meet made the same numbers: a ray cast through the edges then crosses each outline once. */
function snapped(edges: Float64Array, near: number): Float64Array {
  for (let i = 2; i < edges.length; i += 2) {
    for (let k = 0; k < i; k += 2) {
      if (Math.abs(edges[i]! - edges[k]!) > near || Math.abs(edges[i + 1]! - edges[k + 1]!) > near) continue;
      edges[i] = edges[k]!;
      edges[i + 1] = edges[k + 1]!;
      break;
    }
  }
  return edges;
}
