import { Clipper, FillRule } from 'clipper2-ts';
import type { Path64 } from 'clipper2-ts';
import type { Flat } from './flat.ts';
import { flatBox } from './flat.ts';

/** The no-fit region of a fixed shape A and a moving shape B: every shift v for which B + v overlaps A's inside. */
export interface NoFit {
  /** Outline, four numbers an edge (from, to); the region lies on their left. Borders of holes are among them. */
  readonly edges: Float64Array;
}

/** Whole units across the larger side of the region: products of two of them stay exact in float64. */
const GRID = 2 ** 26;

/** Directions of the edges of a flat polygon, radians. */
function directions(p: Flat): Float64Array {
  const n = p.length / 2;
  return Float64Array.from({ length: n }, (_, i) => {
    const k = (i + 1) % n;
    const d = Math.atan2(p[2 * k + 1]! - p[2 * i + 1]!, p[2 * k]! - p[2 * i]!);
    // Due left is π and −π (from a negative zero): one direction must have one number, or its edges are lost.
    return d === -Math.PI ? Math.PI : d;
  });
}

/** Whether going counter-clockwise from `lo` to `hi` passes d; which end counts is the caller's choice. */
const passes = (lo: number, hi: number, d: number, first: boolean): boolean => {
  const after = first ? d >= lo : d > lo;
  const before = first ? d < hi : d <= hi;
  return lo <= hi ? after && before : after || before;
};

/**
 * The convolution of two simple counter-clockwise outlines, as closed cycles: each edge of one carried along those corners of the other whose
 * turn passes its direction (backwards at hollow corners). How often the cycles wind round a point is the number of parts in which A and
 * B + v meet there, so the region is where they wind at all (Guibas, Ramshaw and Stolfi 1983).
 * All choices compare the same stored directions, ties broken as if A were turned by a hair: the cycles close whatever the rounding.
 */
function convolution(a: Flat, b: Flat): Float64Array[] {
  const na = a.length / 2;
  const nb = b.length / 2;
  const da = directions(a);
  const db = directions(b);
  const out = new Map<number, number[]>();
  const link = (from: number, to: number): void => {
    const list = out.get(from);
    if (list) list.push(to);
    else out.set(from, [to]);
  };
  const convex = (d: Float64Array, k: number, n: number): boolean => {
    const turn = d[k]! - d[(k + n - 1) % n]!;
    return (turn < 0 ? turn + 2 * Math.PI : turn) < Math.PI;
  };
  for (let j = 0; j < nb; j++) {
    const enter = db[(j + nb - 1) % nb]!;
    const leave = db[j]!;
    if (enter === leave) continue;
    const out1 = convex(db, j, nb);
    for (let i = 0; i < na; i++) {
      const i1 = (i + 1) % na;
      if (out1 ? passes(enter, leave, da[i]!, true) : passes(leave, enter, da[i]!, true)) {
        if (out1) link(i * nb + j, i1 * nb + j);
        else link(i1 * nb + j, i * nb + j);
      }
    }
  }
  for (let i = 0; i < na; i++) {
    const enter = da[(i + na - 1) % na]!;
    const leave = da[i]!;
    if (enter === leave) continue;
    const out1 = convex(da, i, na);
    for (let j = 0; j < nb; j++) {
      const j1 = (j + 1) % nb;
      if (out1 ? passes(enter, leave, db[j]!, false) : passes(leave, enter, db[j]!, false)) {
        if (out1) link(i * nb + j, i * nb + j1);
        else link(i * nb + j1, i * nb + j);
      }
    }
  }
  const cycles: Float64Array[] = [];
  for (const [start, list] of out) {
    while (list.length) {
      const path: number[] = [];
      let at = start;
      do {
        const i = Math.floor(at / nb);
        const j = at % nb;
        path.push(a[2 * i]! + b[2 * j]!, a[2 * i + 1]! + b[2 * j + 1]!);
        at = out.get(at)?.pop() ?? start;
      } while (at !== start);
      cycles.push(Float64Array.from(path));
    }
  }
  return cycles;
}

/**
 * The ring without the corners that rounding made. One is taken at a time and its neighbours judged anew: two corners a unit apart each
 * look straight beside the other, and dropping both at once would cut a true corner off.
 */
function trueCorners(ring: Path64): Path64 {
  const kept = [...ring];
  for (let i = 0; i < kept.length && kept.length > 3;) {
    const p = kept[(i + kept.length - 1) % kept.length]!;
    const q = kept[i]!;
    const r = kept[(i + 1) % kept.length]!;
    const off = Math.abs((r.x - p.x) * (q.y - p.y) - (r.y - p.y) * (q.x - p.x));
    const between = (q.x - p.x) * (r.x - q.x) + (q.y - p.y) * (r.y - q.y) >= 0;
    const near = Math.hypot(q.x - p.x, q.y - p.y) <= 2;
    if (near || (between && off <= 2 * Math.hypot(r.x - p.x, r.y - p.y))) {
      kept.splice(i, 1);
      i = Math.max(0, i - 1);
    } else i++;
  }
  return kept;
}

/**
 * No-fit region of a fixed outline against a moving one, both counter-clockwise and simple. Exact to one part in 2^26 of its size.
 * An exact-fit slit (zero width) is lost: no cutter could follow it.
 */
export function noFit(fixed: Flat, moving: Flat): NoFit {
  const cycles = convolution(
    fixed,
    moving.map((v) => -v),
  );
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const c of cycles) {
    const box = flatBox(c);
    x0 = Math.min(x0, box[0]);
    y0 = Math.min(y0, box[1]);
    x1 = Math.max(x1, box[2]);
    y1 = Math.max(y1, box[3]);
  }
  const unit = Math.max(x1 - x0, y1 - y0) / GRID;
  const paths = cycles.map((c): Path64 => {
    const path: Path64 = [];
    for (let i = 0; i < c.length; i += 2)
      path.push({ x: Math.round((c[i]! - x0) / unit), y: Math.round((c[i + 1]! - y0) / unit) });
    return path;
  });
  const rings = Clipper.union(paths, [], FillRule.Positive);
  const edges: number[] = [];
  for (const ring of rings) {
    // Rounding leaves holes of a few units; they are no places.
    if (Math.abs(Clipper.area(ring)) < 1e-9 * GRID * GRID) continue;
    const corners = trueCorners(ring);
    for (let i = 0; i < corners.length; i++) {
      const p = corners[i]!;
      const q = corners[(i + 1) % corners.length]!;
      edges.push(p.x * unit + x0, p.y * unit + y0, q.x * unit + x0, q.y * unit + y0);
    }
  }
  return { edges: Float64Array.from(edges) };
}
