import { cubicCount, cubicIsStraight, cubicOf, cubicPoint } from './cubic.ts';
import type { Cubic } from './cubic.ts';
import { placePoint } from './place.ts';
import type { Path, PathPlace, Point } from './types.ts';

/** Samples per curved cubic before refining: a cubic has at most three nearest candidates to a point. */
const SAMPLES = 16;

/** Zero of (B − p)·B′ by Newton, kept inside the bracket. In plain numbers: this is the most called search of all. */
function refine(cubic: Cubic, point: Point, lo: number, guess: number, hi: number): number {
  const x0 = cubic[0].x - point.x;
  const y0 = cubic[0].y - point.y;
  const x1 = 3 * (cubic[1].x - cubic[0].x);
  const y1 = 3 * (cubic[1].y - cubic[0].y);
  const x2 = 3 * (cubic[2].x - 2 * cubic[1].x + cubic[0].x);
  const y2 = 3 * (cubic[2].y - 2 * cubic[1].y + cubic[0].y);
  const x3 = cubic[3].x - 3 * cubic[2].x + 3 * cubic[1].x - cubic[0].x;
  const y3 = cubic[3].y - 3 * cubic[2].y + 3 * cubic[1].y - cubic[0].y;
  let t = guess;
  for (let k = 0; k < 60; k++) {
    const dx = x0 + t * (x1 + t * (x2 + t * x3));
    const dy = y0 + t * (y1 + t * (y2 + t * y3));
    const vx = x1 + t * (2 * x2 + t * 3 * x3);
    const vy = y1 + t * (2 * y2 + t * 3 * y3);
    const f = dx * vx + dy * vy;
    if (f === 0) return t;
    if (f < 0) lo = t;
    else hi = t;
    const df = vx * vx + vy * vy + dx * (2 * x2 + 6 * t * x3) + dy * (2 * y2 + 6 * t * y3);
    let next = df > 0 ? t - f / df : (lo + hi) / 2;
    if (!(next > lo && next < hi)) next = (lo + hi) / 2;
    if (Math.abs(next - t) < 1e-15) return next;
    t = next;
  }
  return t;
}

/** Squared distances of the samples of one cubic: written anew for each, so that a search makes no list. */
const far = new Float64Array(SAMPLES + 1);

/** The place of the path nearest to a point, the point there, and how far it is. The first one where several are equally near. */
export function nearestPlace(path: Path, point: Point): { place: PathPlace; point: Point; distance: number } {
  // Corners are asked for more often than anything else, and need no search.
  const start = path[0]!;
  if (start.x === point.x && start.y === point.y)
    return { place: { cubic: 0, t: 0 }, point: start, distance: 0 };
  let best = Infinity;
  let bestCubic = 0;
  let bestT = 0;
  const count = cubicCount(path);
  for (let i = 0; i < count; i++) {
    const cubic = cubicOf(path, i);
    if (hullDistance(cubic, point) >= best) continue;
    const straight = cubicIsStraight(cubic);
    if (!straight) for (let k = 0; k <= SAMPLES; k++) far[k] = distanceAt(cubic, point, k / SAMPLES);
    // Candidates: both ends, then the low places between; on a straight cubic the one foot.
    const last = straight ? 0 : SAMPLES + 2;
    for (let n = 0; n <= last; n++) {
      const t = straight ? footOnLine(cubic, point) : candidate(cubic, point, n);
      if (t < 0) continue;
      const d = straight ? lineDistance(cubic, point, t) : distanceAt(cubic, point, t);
      if (d >= best) continue;
      best = d;
      bestCubic = i;
      bestT = t;
    }
  }
  const place = { cubic: bestCubic, t: bestT };
  return { place, point: placePoint(path, place), distance: Math.sqrt(best) };
}

/** The n-th parameter worth looking at, of the samples in `far`: its ends first, which need no search; −1 where a sample is no low place. */
function candidate(cubic: Cubic, point: Point, n: number): number {
  if (n < 2) return n;
  const k = n - 2;
  if ((k > 0 && far[k]! > far[k - 1]!) || (k < SAMPLES && far[k]! > far[k + 1]!)) return -1;
  const lo = Math.max(0, k - 1) / SAMPLES;
  const hi = Math.min(SAMPLES, k + 1) / SAMPLES;
  // A control sitting on its end would stop Newton right there.
  const guess = k === 0 || k === SAMPLES ? (lo + hi) / 2 : k / SAMPLES;
  return refine(cubic, point, lo, guess, hi);
}

/** Squared distance from the box of the control points, which holds the curve. */
function hullDistance(cubic: Cubic, point: Point): number {
  const a = cubic[0];
  const b = cubic[1];
  const c = cubic[2];
  const d = cubic[3];
  const x = Math.max(Math.min(a.x, b.x, c.x, d.x) - point.x, 0, point.x - Math.max(a.x, b.x, c.x, d.x));
  const y = Math.max(Math.min(a.y, b.y, c.y, d.y) - point.y, 0, point.y - Math.max(a.y, b.y, c.y, d.y));
  return x * x + y * y;
}

/** Squared distance of the cubic's point at t. */
function distanceAt(cubic: Cubic, point: Point, t: number): number {
  const p = cubicPoint(cubic, t);
  const x = p.x - point.x;
  const y = p.y - point.y;
  return x * x + y * y;
}

function footOnLine(cubic: Cubic, point: Point): number {
  const a = cubic[0];
  const vx = cubic[3].x - a.x;
  const vy = cubic[3].y - a.y;
  const vv = vx * vx + vy * vy;
  return vv > 0 ? Math.min(1, Math.max(0, ((point.x - a.x) * vx + (point.y - a.y) * vy) / vv)) : 0;
}

function lineDistance(cubic: Cubic, point: Point, t: number): number {
  const a = cubic[0];
  const x = a.x + (cubic[3].x - a.x) * t - point.x;
  const y = a.y + (cubic[3].y - a.y) * t - point.y;
  return x * x + y * y;
}
