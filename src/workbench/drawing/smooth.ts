import type { Point } from '../../geometry/index.ts';

const n = (v: number): string => v.toFixed(1);

/** An SVG path through points without overshoot at flat runs (Catmull-Rom with tension): for pictures only, never for pieces. */
export function smoothPath(points: readonly Point[], closed = false): string {
  const at = (i: number): Point =>
    closed
      ? points[(i + points.length) % points.length]!
      : points[Math.max(0, Math.min(points.length - 1, i))]!;
  const first = points[0]!;
  const parts = [`M${n(first.x)} ${n(first.y)}`];
  const last = closed ? points.length : points.length - 1;
  for (let i = 0; i < last; i++) {
    const [p0, p1, p2, p3] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const c1 = { x: p1.x + (p2.x - p0.x) / 6, y: p1.y + (p2.y - p0.y) / 6 };
    const c2 = { x: p2.x - (p3.x - p1.x) / 6, y: p2.y - (p3.y - p1.y) / 6 };
    parts.push(`C${n(c1.x)} ${n(c1.y)} ${n(c2.x)} ${n(c2.y)} ${n(p2.x)} ${n(p2.y)}`);
  }
  return parts.join('') + (closed ? 'Z' : '');
}

/** Straight runs through points. */
export function runPath(points: readonly Point[]): string {
  return points.map((p, i) => `${i ? 'L' : 'M'}${n(p.x)} ${n(p.y)}`).join('');
}
