import { cubicCount, cubicIsStraight, cubicOf, cubicPoint } from './cubic.ts';
import type { Cubic } from './cubic.ts';
import { pointsBox } from './box.ts';
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

/** The place of the path nearest to a point, the point there, and how far it is. The first one where several are equally near. */
export function nearestPlace(path: Path, point: Point): { place: PathPlace; point: Point; distance: number } {
  // Corners are asked for more often than anything else, and need no search.
  const start = path[0]!;
  if (start.x === point.x && start.y === point.y)
    return { place: { cubic: 0, t: 0 }, point: start, distance: 0 };
  let best = Infinity;
  let place: PathPlace = { cubic: 0, t: 0 };
  const offer = (cubic: number, t: number, at: Point): void => {
    const dx = at.x - point.x;
    const dy = at.y - point.y;
    const d = dx * dx + dy * dy;
    if (d < best) {
      best = d;
      place = { cubic, t };
    }
  };
  for (let i = 0; i < cubicCount(path); i++) {
    const cubic = cubicOf(path, i);
    const box = pointsBox(cubic);
    const outX = Math.max(box.minX - point.x, 0, point.x - box.maxX);
    const outY = Math.max(box.minY - point.y, 0, point.y - box.maxY);
    if (outX * outX + outY * outY >= best) continue;
    const [a, , , d] = cubic;
    if (cubicIsStraight(cubic)) {
      const vx = d.x - a.x;
      const vy = d.y - a.y;
      const vv = vx * vx + vy * vy;
      const t = vv > 0 ? Math.min(1, Math.max(0, ((point.x - a.x) * vx + (point.y - a.y) * vy) / vv)) : 0;
      offer(i, t, { x: a.x + vx * t, y: a.y + vy * t });
      continue;
    }
    offer(i, 0, a);
    offer(i, 1, d);
    const far: number[] = [];
    for (let k = 0; k <= SAMPLES; k++) {
      const p = cubicPoint(cubic, k / SAMPLES);
      far.push((p.x - point.x) ** 2 + (p.y - point.y) ** 2);
    }
    for (let k = 0; k <= SAMPLES; k++) {
      if (far[k]! > (far[k - 1] ?? Infinity) || far[k]! > (far[k + 1] ?? Infinity)) continue;
      const lo = Math.max(0, k - 1) / SAMPLES;
      const hi = Math.min(SAMPLES, k + 1) / SAMPLES;
      // The ends are offered already; a control sitting on its end would stop Newton right there.
      const guess = k === 0 || k === SAMPLES ? (lo + hi) / 2 : k / SAMPLES;
      const t = refine(cubic, point, lo, guess, hi);
      offer(i, t, cubicPoint(cubic, t));
    }
  }
  return { place, point: placePoint(path, place), distance: Math.sqrt(best) };
}
