import type { Flat } from './flat.ts';
import type { ConvexSums } from './convex-sums.ts';
import { convexSums, coveredShare } from './convex-sums.ts';

/** The no-fit region of a fixed shape A and a moving shape B: every shift v for which B + v overlaps A's inside. */
export interface NoFit {
  /** Outline, four numbers an edge (from, to); the region lies on their left. Borders of holes are among them. */
  readonly edges: Float64Array;
}

/** One outline as the regions are made of: itself and convex parts that together cover exactly it. */
export interface Parted {
  readonly outline: Flat;
  readonly parts: readonly Flat[];
}

/** Below this share of the region's size two lines are one: far above rounding, far below a thread. */
const SAME = 1e-10;

/**
 * Every edge of `a` carried along the corners of `b` that stick out past it. The outline of a sum of two shapes is made of these and the
 * same with the two exchanged: at a hollow corner, or one that does not stick out, the sum has inside on both sides.
 * Ties count on both ends of an edge that runs alongside; what is there twice is dropped later.
 */
function carried(a: Flat, b: Flat, out: number[]): void {
  const na = a.length;
  const nb = b.length;
  for (let j = 0; j < nb; j += 2) {
    const before = (j + nb - 2) % nb;
    const after = (j + 2) % nb;
    const ex = b[j]! - b[before]!;
    const ey = b[j + 1]! - b[before + 1]!;
    const fx = b[after]! - b[j]!;
    const fy = b[after + 1]! - b[j + 1]!;
    const e = Math.hypot(ex, ey);
    const f = Math.hypot(fx, fy);
    if ((ex * fy - ey * fx) / (e * f) < -1e-9) continue;
    for (let i = 0; i < na; i += 2) {
      const k = (i + 2) % na;
      const dx = a[k]! - a[i]!;
      const dy = a[k + 1]! - a[i + 1]!;
      const d = Math.hypot(dx, dy);
      if ((ex * dy - ey * dx) / (e * d) < -1e-9 || (dx * fy - dy * fx) / (d * f) < -1e-9) continue;
      if (ex * dx + ey * dy < 0 && fx * dx + fy * dy < 0) continue;
      out.push(a[i]! + b[j]!, a[i + 1]! + b[j + 1]!, a[k]! + b[j]!, a[k + 1]! + b[j + 1]!);
    }
  }
}

/** What of each edge lies in no sum's inside: the outline of their union, some stretches twice. */
function uncovered(edges: readonly number[], sums: ConvexSums): number[] {
  const out: number[] = [];
  for (let i = 0; i < edges.length; i += 4) {
    const px = edges[i]!;
    const py = edges[i + 1]!;
    const dx = edges[i + 2]! - px;
    const dy = edges[i + 3]! - py;
    const len = Math.hypot(dx, dy);
    if (len <= sums.size * SAME) continue;
    const spans = coveredShare(sums, px, py, dx, dy, len, sums.size * SAME);
    if (!spans) continue;
    let at = 0;
    for (const [s, e] of spans) {
      if ((s - at) * len > sums.size * 1e-9) out.push(px + dx * at, py + dy * at, px + dx * s, py + dy * s);
      at = Math.max(at, e);
    }
    if ((1 - at) * len > sums.size * 1e-9) out.push(px + dx * at, py + dy * at, px + dx, py + dy);
  }
  return out;
}

/** Each stretch once: what an earlier edge already runs along, in the same line and direction, is taken off the later ones. */
function once(edges: readonly number[], same: number): number[] {
  const out: number[] = [];
  for (let i = 0; i < edges.length; i += 4) {
    const px = edges[i]!;
    const py = edges[i + 1]!;
    const dx = edges[i + 2]! - px;
    const dy = edges[i + 3]! - py;
    const len = Math.hypot(dx, dy);
    const taken: [number, number][] = [];
    for (let k = 0; k < out.length; k += 4) {
      const ax = out[k]! - px;
      const ay = out[k + 1]! - py;
      const bx = out[k + 2]! - px;
      const by = out[k + 3]! - py;
      if (Math.abs(ax * dy - ay * dx) > same * len || Math.abs(bx * dy - by * dx) > same * len) continue;
      const s = (ax * dx + ay * dy) / (len * len);
      const e = (bx * dx + by * dy) / (len * len);
      if (e > s && e > 0 && s < 1) taken.push([s, e]);
    }
    taken.sort((u, v) => u[0] - v[0] || u[1] - v[1]);
    let at = 0;
    for (const [s, e] of [...taken, [1, 1] as const]) {
      if ((s - at) * len > same) out.push(px + dx * at, py + dy * at, px + dx * s, py + dy * s);
      at = Math.max(at, e);
    }
  }
  return out;
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

/**
 * No-fit region of a fixed shape against a moving one, both simple and counter-clockwise. The union of the convex sums of all their parts is
 * the region; its outline is what those sums leave bare of the carried edges. Holes are kept, an exact-fit slit (zero width) is dropped:
 * no cutter could follow it.
 */
export function noFit(fixed: Parted, moving: Parted): NoFit {
  const minus = (p: Flat): Flat => p.map((v) => -v);
  const outline = minus(moving.outline);
  const sums = convexSums(fixed.parts, moving.parts.map(minus));
  const edges: number[] = [];
  carried(fixed.outline, outline, edges);
  carried(outline, fixed.outline, edges);
  const bare = once(uncovered(edges, sums), sums.size * 1e-9);
  return { edges: snapped(Float64Array.from(bare), sums.size * 1e-8) };
}
