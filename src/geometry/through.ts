import type { EndTangents } from './fit.ts';
import { cubicLength } from './length.ts';
import type { Path, Point } from './types.ts';
import { distance, scale, unit } from './vector.ts';

/** Rounds of replacing chords by the arc lengths just found; the velocities then are near one, as on a bent lath. */
const ROUNDS = 5;

/** Velocities at the points of the C² spline with the given steps; clamped to unit speed where a tangent is given, else natural. */
function velocities(points: readonly Point[], h: readonly number[], start?: Point, end?: Point): Point[] {
  const n = points.length;
  const low = new Float64Array(n);
  const mid = new Float64Array(n);
  const high = new Float64Array(n);
  const rx = new Float64Array(n);
  const ry = new Float64Array(n);
  const rise = (i: number): Point => ({
    x: (points[i + 1]!.x - points[i]!.x) / h[i]!,
    y: (points[i + 1]!.y - points[i]!.y) / h[i]!,
  });
  const set = (i: number, l: number, m: number, u: number, x: number, y: number): void => {
    low[i] = l;
    mid[i] = m;
    high[i] = u;
    rx[i] = x;
    ry[i] = y;
  };
  if (start) set(0, 0, 1, 0, start.x, start.y);
  else set(0, 0, 2, 1, 3 * rise(0).x, 3 * rise(0).y);
  for (let i = 1; i + 1 < n; i++) {
    const a = h[i - 1]!;
    const b = h[i]!;
    const before = rise(i - 1);
    const after = rise(i);
    set(i, b, 2 * (a + b), a, 3 * (b * before.x + a * after.x), 3 * (b * before.y + a * after.y));
  }
  if (end) set(n - 1, 0, 1, 0, end.x, end.y);
  else set(n - 1, 1, 2, 0, 3 * rise(n - 2).x, 3 * rise(n - 2).y);
  // Thomas' elimination; the matrix is diagonally dominant, so no pivoting.
  for (let i = 1; i < n; i++) {
    const w = low[i]! / mid[i - 1]!;
    mid[i]! -= w * high[i - 1]!;
    rx[i]! -= w * rx[i - 1]!;
    ry[i]! -= w * ry[i - 1]!;
  }
  const out: Point[] = [];
  for (let i = n - 1; i >= 0; i--) {
    const next = out[n - 2 - i];
    const v = {
      x: (rx[i]! - (next ? high[i]! * next.x : 0)) / mid[i]!,
      y: (ry[i]! - (next ? high[i]! * next.y : 0)) / mid[i]!,
    };
    out.push(v);
  }
  return out.reverse();
}

/**
 * A smooth path through the points, one cubic between each two: the C² spline over arc length, the nearest mathematics has to a bent lath
 * (curvature runs through without a jump; without end tangents the ends are free and straighten out). End tangents point the way the path is walked; any length.
 * Throws a RangeError with fewer than two points or two equal neighbours.
 */
export function throughPoints(
  points: readonly Point[],
  { startTangent, endTangent }: EndTangents = {},
): Path {
  if (points.length < 2) throw new RangeError('throughPoints needs at least two points');
  const chords: number[] = [];
  for (let i = 1; i < points.length; i++) chords.push(distance(points[i - 1]!, points[i]!));
  if (chords.some((c) => !(c > 0))) throw new RangeError('throughPoints needs neighbours that differ');
  const start = startTangent && unit(startTangent);
  const end = endTangent && unit(endTangent);
  let h = chords;
  let out: Point[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const v = velocities(points, h, start, end);
    out = [points[0]!];
    const lengths: number[] = [];
    for (let i = 0; i + 1 < points.length; i++) {
      const a = points[i]!;
      const d = points[i + 1]!;
      const va = scale(v[i]!, h[i]! / 3);
      const vd = scale(v[i + 1]!, h[i]! / 3);
      const b = { x: a.x + va.x, y: a.y + va.y };
      const c = { x: d.x - vd.x, y: d.y - vd.y };
      out.push(b, c, d);
      // A wild curve must not feed on itself: the step is held to twice the chord.
      lengths.push(Math.min(cubicLength([a, b, c, d]), 2 * chords[i]!));
    }
    h = lengths;
  }
  return out;
}
