import { cubicCount, cubicIsStraight, cubicOf, cubicVelocity } from './cubic.ts';
import type { Cubic } from './cubic.ts';
import { pathBetween } from './path.ts';
import { LENGTH_MM } from './tolerance.ts';
import type { Path, PathPlace, Point } from './types.ts';
import { placePoint } from './place.ts';
import { norm } from './vector.ts';

/** Gauss-Legendre nodes and weights on −1..1, positive half (Abramowitz & Stegun, Handbook of Mathematical Functions, table 25.4). */
const NODES_8 = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363];
const WEIGHTS_8 = [0.362683783378362, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];
const NODES_16 = [
  0.0950125098376374, 0.2816035507792589, 0.4580167776572274, 0.6178762444026438, 0.755404408355003,
  0.8656312023878318, 0.9445750230732326, 0.9894009349916499,
];
const WEIGHTS_16 = [
  0.1894506104550685, 0.1826034150449236, 0.1691565193950025, 0.1495959888165767, 0.1246289712555339,
  0.0951585116824928, 0.0622535239386479, 0.0271524594117541,
];
/** Halving stops here: 2⁻⁴⁰ of a cubic is below any length. Reached only next to a cusp, where what is left is negligible. */
const DEEPEST = 40;

/**
 * Derivative of the cubic being measured, as polynomial coefficients in t: x0 + x1 t + x2 t², then y. Filled in anew for each, so that the
 * most asked of all questions leaves nothing behind.
 */
const V = new Float64Array(6);

function differentiate(cubic: Cubic): void {
  const a = cubic[0];
  const b = cubic[1];
  const c = cubic[2];
  const d = cubic[3];
  V[0] = 3 * (b.x - a.x);
  V[1] = 6 * (a.x - 2 * b.x + c.x);
  V[2] = 3 * (d.x - 3 * c.x + 3 * b.x - a.x);
  V[3] = 3 * (b.y - a.y);
  V[4] = 6 * (a.y - 2 * b.y + c.y);
  V[5] = 3 * (d.y - 3 * c.y + 3 * b.y - a.y);
}

/** Speed of that cubic at t. */
function speedAt(t: number): number {
  const x = V[0]! + t * (V[1]! + t * V[2]!);
  const y = V[3]! + t * (V[4]! + t * V[5]!);
  return Math.sqrt(x * x + y * y);
}

function gauss(t0: number, t1: number, nodes: readonly number[], weights: readonly number[]): number {
  const half = (t1 - t0) / 2;
  const middle = (t0 + t1) / 2;
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) {
    const d = half * nodes[i]!;
    sum += weights[i]! * (speedAt(middle - d) + speedAt(middle + d));
  }
  return sum * half;
}

/** Sums agree no better than this share of themselves: a curve of 10¹⁵ mm, in a damaged file, would be halved for ever. */
const ROUNDING = 1e-13;

/** 16 points over the whole against 8 over each half; halves what disagrees. The difference bounds the error of the better of the two. */
function adaptive(t0: number, t1: number, bound: number, depth: number): number {
  const whole = gauss(t0, t1, NODES_16, WEIGHTS_16);
  const middle = (t0 + t1) / 2;
  const halves = gauss(t0, middle, NODES_8, WEIGHTS_8) + gauss(middle, t1, NODES_8, WEIGHTS_8);
  if (Math.abs(whole - halves) <= Math.max(bound, ROUNDING * whole) || depth >= DEEPEST) return whole;
  return adaptive(t0, middle, bound / 2, depth + 1) + adaptive(middle, t1, bound / 2, depth + 1);
}

const NONE: readonly number[] = [];

/**
 * Parameters inside (0, 1) where the speed has a low point. Next to a cusp the integrand is like |t − t₀|; with t₀ as a
 * border both sides are smooth. Where the three control legs all point forward the speed cannot come near zero.
 */
function slowPlaces(cubic: Cubic): readonly number[] {
  const a = cubic[0];
  const b = cubic[1];
  const c = cubic[2];
  const d = cubic[3];
  const d0x = b.x - a.x;
  const d0y = b.y - a.y;
  const d1x = c.x - b.x;
  const d1y = c.y - b.y;
  const d2x = d.x - c.x;
  const d2y = d.y - c.y;
  const cx = d.x - a.x;
  const cy = d.y - a.y;
  const chord = (cx * cx + cy * cy) * 0.05;
  if (d0x * cx + d0y * cy > chord && d1x * cx + d1y * cy > chord && d2x * cx + d2y * cy > chord) return NONE;
  return lowPoints();
}

function lowPoints(): number[] {
  // Half the derivative of |v|²: a cubic in t. Its upward zero crossings are the low points; found by sampling and halving.
  const rise = (t: number): number =>
    (V[0]! + t * (V[1]! + t * V[2]!)) * (V[1]! + 2 * t * V[2]!) +
    (V[3]! + t * (V[4]! + t * V[5]!)) * (V[4]! + 2 * t * V[5]!);
  const found: number[] = [];
  const SAMPLES = 32;
  for (let i = 0; i < SAMPLES; i++) {
    let lo = i / SAMPLES;
    let hi = (i + 1) / SAMPLES;
    if (!(rise(lo) < 0 && rise(hi) >= 0)) continue;
    for (let k = 0; k < 50; k++) {
      const middle = (lo + hi) / 2;
      if (rise(middle) < 0) lo = middle;
      else hi = middle;
    }
    found.push(hi);
  }
  return found;
}

/** Length of the cubic between two parameters, error at most LENGTH_MM. */
export function cubicLength(cubic: Cubic, t0 = 0, t1 = 1): number {
  if (t1 <= t0) return 0;
  if (cubicIsStraight(cubic)) {
    return (t1 - t0) * norm(cubic[3].x - cubic[0].x, cubic[3].y - cubic[0].y);
  }
  differentiate(cubic);
  const slows = slowPlaces(cubic);
  if (slows.length === 0) return adaptive(t0, t1, LENGTH_MM / 8, 0);
  let sum = 0;
  let from = t0;
  for (const slow of slows) {
    if (slow <= from || slow >= t1) continue;
    sum += adaptive(from, slow, LENGTH_MM / 8, 0);
    from = slow;
  }
  return sum + adaptive(from, t1, LENGTH_MM / 8, 0);
}

/** Lengths from the start of the path to the end of each cubic. Paths are never mutated, so each is measured once. */
const measured = new WeakMap<Path, readonly number[]>();

function cumulative(path: Path): readonly number[] {
  const known = measured.get(path);
  if (known) return known;
  const n = cubicCount(path);
  // Mostly one to four numbers: a plain list is made many times faster than a typed one, and in its final size smaller than a grown one.
  const sums: number[] = n === 1 ? [0] : [];
  let sum = 0;
  for (let i = 0; i < n; i++) sums[i] = sum += cubicLength(cubicOf(path, i));
  measured.set(path, sums);
  return sums;
}

/** Arc length in mm, error at most LENGTH_MM per cubic; also right at cusps. */
export function pathLength(path: Path): number {
  if (isRuled(path)) return chord(path);
  return cumulative(path)[cubicCount(path) - 1]!;
}

/** A ruled line is measured faster than it is looked up, and half of all edges are ruled. */
const isRuled = (path: Path): boolean => path.length === 4 && cubicIsStraight(path as unknown as Cubic);

const chord = (path: Path): number => {
  const a = path[0]!;
  const d = path[path.length - 1]!;
  return norm(d.x - a.x, d.y - a.y);
};

/** Arc length from the start of the path to the place. */
export function lengthAtPlace(path: Path, place: PathPlace): number {
  return isRuled(path) ? alongRuled(path, place.t) : alongCurve(path, cumulative(path), place);
}

const alongRuled = (path: Path, t: number): number => chord(path) * Math.min(1, Math.max(0, t));

function alongCurve(path: Path, sums: readonly number[], { cubic, t }: PathPlace): number {
  if (t >= 1) return sums[cubic]!;
  const before = cubic === 0 ? 0 : sums[cubic - 1]!;
  return before + cubicLength(cubicOf(path, cubic), 0, t);
}

/** Share (0..1) of the arc length at the place; 0 on a path of no length. */
export function shareAtPlace(path: Path, place: PathPlace): number {
  const sums = isRuled(path) ? undefined : cumulative(path);
  const whole = sums ? sums[sums.length - 1]! : chord(path);
  if (!(whole > 0)) return 0;
  return (sums ? alongCurve(path, sums, place) : alongRuled(path, place.t)) / whole;
}

/** The place `mm` along the path from its start; held to the path's ends. Within LENGTH_MM of the wanted length. */
export function placeAtLength(path: Path, mm: number): PathPlace {
  return isRuled(path) ? placeOnRuled(mm, chord(path)) : placeOnCurve(path, cumulative(path), mm);
}

const placeOnRuled = (mm: number, whole: number): PathPlace => ({
  cubic: 0,
  t: mm > 0 ? Math.min(1, mm / whole) : 0,
});

function placeOnCurve(path: Path, sums: readonly number[], mm: number): PathPlace {
  if (!(mm > 0)) return { cubic: 0, t: 0 };
  const last = sums.length - 1;
  if (mm >= sums[last]!) return { cubic: last, t: 1 };
  let cubic = 0;
  while (sums[cubic]! < mm) cubic++;
  const before = cubic === 0 ? 0 : sums[cubic - 1]!;
  const own = sums[cubic]! - before;
  const want = mm - before;
  const c = cubicOf(path, cubic);
  if (cubicIsStraight(c)) return { cubic, t: want / own };
  // Newton on the length, held between two bounds; each round measures only from the last guess to the next.
  let lo = 0;
  let hi = 1;
  let t = want / own;
  let have = cubicLength(c, 0, t);
  for (let round = 0; round < 60; round++) {
    const miss = want - have;
    if (Math.abs(miss) <= LENGTH_MM / 4) break;
    if (miss > 0) lo = t;
    else hi = t;
    const v = cubicVelocity(c, t);
    const speed = norm(v.x, v.y);
    let next = speed > 0 ? t + miss / speed : (lo + hi) / 2;
    if (!(next > lo && next < hi)) next = (lo + hi) / 2;
    if (next === t) break;
    have += next > t ? cubicLength(c, t, next) : -cubicLength(c, next, t);
    t = next;
  }
  return { cubic, t };
}

/** The place at a share (0..1) of the arc length. */
export function placeAtShare(path: Path, share: number): PathPlace {
  if (isRuled(path)) {
    const whole = chord(path);
    return placeOnRuled(share * whole, whole);
  }
  const sums = cumulative(path);
  return placeOnCurve(path, sums, share * sums[sums.length - 1]!);
}

/** The point at a share (0..1) of the arc length. */
export const pathAt = (path: Path, share: number): Point => placePoint(path, placeAtShare(path, share));

/** The part between two shares of the arc length; walked backwards when the first is the greater. */
export function pathPart(path: Path, shareA: number, shareB: number): Path {
  if (shareA > shareB) return pathPart(path, shareB, shareA).toReversed();
  if (shareA <= 0 && shareB >= 1) return path;
  return pathBetween(path, placeAtShare(path, shareA), placeAtShare(path, shareB));
}
