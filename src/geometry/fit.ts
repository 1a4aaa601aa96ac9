import { cubicAcceleration, cubicPoint, cubicVelocity, straightCubic } from './cubic.ts';
import type { Cubic } from './cubic.ts';
import { STORED_MM } from './tolerance.ts';
import type { Path, Point } from './types.ts';
import { add, cross, distance, dot, length, perp, scale, sub, unit } from './vector.ts';

/** Directions at the two ends, both pointing the way the path is walked; any length. */
export interface EndTangents {
  readonly startTangent?: Point;
  readonly endTangent?: Point;
}

/** Rounds of moving the parameters to the nearest place before the run is cut in two. */
const ROUNDS = 12;

/**
 * Least squares for the two handle lengths with the tangents held. Given the cubic of the round before, only the miss across it is
 * counted: along it the parameters move freely (tangent distance minimisation; Wang, Pottmann & Liu, ACM Trans. Graphics 25, 2006), which settles in a few rounds.
 */
function handles(
  points: readonly Point[],
  u: Float64Array,
  lo: number,
  hi: number,
  t0: Point,
  t1: Point,
  before?: Cubic,
): Cubic {
  const a = points[lo]!;
  const d = points[hi]!;
  let c00 = 0;
  let c01 = 0;
  let c11 = 0;
  let x0 = 0;
  let x1 = 0;
  const row = (m0: number, m1: number, r: number): void => {
    c00 += m0 * m0;
    c01 += m0 * m1;
    c11 += m1 * m1;
    x0 += m0 * r;
    x1 += m1 * r;
  };
  for (let i = lo + 1; i < hi; i++) {
    const t = u[i]!;
    const s = 1 - t;
    const b1 = 3 * s * s * t;
    const b2 = 3 * s * t * t;
    const b0 = s * s * s + b1;
    const b3 = t * t * t + b2;
    const p = points[i]!;
    const r = { x: p.x - (a.x * b0 + d.x * b3), y: p.y - (a.y * b0 + d.y * b3) };
    const n = before && perp(unit(cubicVelocity(before, t)));
    if (n) row(b1 * dot(t0, n), b2 * dot(t1, n), dot(r, n));
    else {
      row(b1 * t0.x, b2 * t1.x, r.x);
      row(b1 * t0.y, b2 * t1.y, r.y);
    }
  }
  const chord = distance(a, d);
  const det = c00 * c11 - c01 * c01;
  let h0 = 0;
  let h1 = 0;
  if (Math.abs(det) > 1e-12 * c00 * c11) {
    h0 = (x0 * c11 - x1 * c01) / det;
    h1 = (x1 * c00 - x0 * c01) / det;
  }
  // A handle of no length or pointing backwards makes a kink: the chord's third is the safe one (Schneider).
  const least = chord * 1e-3;
  if (!(h0 > least && h1 > least && h0 < 4 * chord && h1 < 4 * chord)) h0 = h1 = chord / 3;
  return [a, add(a, scale(t0, h0)), add(d, scale(t1, h1)), d];
}

function settle(points: readonly Point[], u: Float64Array, lo: number, hi: number, cubic: Cubic): void {
  for (let i = lo + 1; i < hi; i++) {
    const t = u[i]!;
    const off = sub(cubicPoint(cubic, t), points[i]!);
    const v = cubicVelocity(cubic, t);
    const slope = dot(v, v) + dot(off, cubicAcceleration(cubic, t));
    if (slope > 0) u[i] = Math.min(1, Math.max(0, t - dot(off, v) / slope));
  }
}

function worst(
  points: readonly Point[],
  u: Float64Array,
  lo: number,
  hi: number,
  cubic: Cubic,
): { at: number; off: number } {
  let at = (lo + hi) >> 1;
  let off = 0;
  for (let i = lo + 1; i < hi; i++) {
    const d = distance(cubicPoint(cubic, u[i]!), points[i]!);
    if (d > off) {
      off = d;
      at = i;
    }
  }
  return { at, off };
}

/** Direction at an inner point: of the parabola through it and its two neighbours, by their distances. */
function middleTangent(points: readonly Point[], i: number): Point {
  const before = sub(points[i]!, points[i - 1]!);
  const after = sub(points[i + 1]!, points[i]!);
  const l0 = length(before);
  const l1 = length(after);
  return unit(add(scale(before, l1 / l0), scale(after, l0 / l1)));
}

/** Direction at an end: of the parabola through the first three points. */
function endDirection(points: readonly Point[], end: 'start' | 'end'): Point {
  const n = points.length;
  const [p, q, r] =
    end === 'start' ? [points[0]!, points[1]!, points[2]] : [points[n - 1]!, points[n - 2]!, points[n - 3]];
  const d1 = sub(q, p);
  const d = r
    ? sub(
        scale(d1, 1 / length(d1) + 1 / (length(d1) + distance(q, r))),
        scale(sub(r, q), length(d1) / distance(q, r) / (length(d1) + distance(q, r))),
      )
    : d1;
  return unit(end === 'start' ? d : scale(d, -1));
}

function run(
  points: readonly Point[],
  lo: number,
  hi: number,
  t0: Point,
  t1: Point,
  tolerance: number,
  out: Point[],
): void {
  const a = points[lo]!;
  const d = points[hi]!;
  const chord = sub(d, a);
  const chordLength = length(chord);
  const onChord = (p: Point): boolean => Math.abs(cross(chord, sub(p, a))) <= (STORED_MM / 10) * chordLength;
  const straight =
    chordLength > 0 &&
    onChord(add(a, scale(t0, chordLength / 3))) &&
    onChord(add(d, scale(t1, chordLength / 3))) &&
    points.slice(lo, hi + 1).every(onChord);
  if (straight && dot(t0, chord) > 0 && dot(t1, chord) < 0) {
    out.push(...straightCubic(a, d).slice(1));
    return;
  }
  const u = new Float64Array(points.length);
  let sum = 0;
  for (let i = lo + 1; i <= hi; i++) u[i] = sum += distance(points[i]!, points[i - 1]!);
  for (let i = lo + 1; i <= hi; i++) u[i]! /= sum;
  let cubic = handles(points, u, lo, hi, t0, t1);
  let miss = worst(points, u, lo, hi, cubic);
  for (let k = 0; k < ROUNDS && miss.off > tolerance && miss.off < 20 * tolerance + 0.05 * chordLength; k++) {
    settle(points, u, lo, hi, cubic);
    cubic = handles(points, u, lo, hi, t0, t1, cubic);
    miss = worst(points, u, lo, hi, cubic);
  }
  if (miss.off <= tolerance || hi - lo < 2) {
    out.push(cubic[1], cubic[2], cubic[3]);
    return;
  }
  const middle = middleTangent(points, miss.at);
  run(points, lo, miss.at, t0, scale(middle, -1), tolerance, out);
  run(points, miss.at, hi, middle, t1, tolerance, out);
}

/**
 * Cubics through the ends and within `tolerance` mm of every point given, smooth where they join. Least-squares handles with the parameters
 * moved to the nearest place, cut at the worst point when that is not enough (P. J. Schneider, An algorithm for automatically fitting digitized curves,
 * Graphics Gems, 1990), but the tolerance is a distance, not its square. Corners are the caller's: cut there first.
 * Doubled points are passed over. Throws a RangeError with fewer than two distinct points.
 */
export function fitPath(
  points: readonly Point[],
  tolerance: number,
  { startTangent, endTangent }: EndTangents = {},
): Path {
  const own: Point[] = [];
  for (const p of points) {
    const last = own[own.length - 1];
    if (!last || last.x !== p.x || last.y !== p.y) own.push(p);
  }
  if (own.length < 2) throw new RangeError('fitPath needs at least two distinct points');
  const t0 = startTangent ? unit(startTangent) : endDirection(own, 'start');
  const t1 = endTangent ? unit(endTangent) : endDirection(own, 'end');
  const out: Point[] = [own[0]!];
  run(own, 0, own.length - 1, t0, scale(t1, -1), tolerance, out);
  return out;
}
