/** Flat polygon: x0, y0, x1, y1 …; counter-clockwise. The engine's own form, for speed. */
export type Flat = Float64Array;

/** Twice the signed area of a flat polygon; positive when counter-clockwise. */
export function flatArea(p: Flat): number {
  let sum = 0;
  for (let i = 0, j = p.length - 2; i < p.length; j = i, i += 2) sum += p[j]! * p[i + 1]! - p[i]! * p[j + 1]!;
  return sum / 2;
}

/** Least and greatest coordinates: [minX, minY, maxX, maxY]. */
export function flatBox(p: Flat): [number, number, number, number] {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < p.length; i += 2) {
    x0 = Math.min(x0, p[i]!);
    x1 = Math.max(x1, p[i]!);
    y0 = Math.min(y0, p[i + 1]!);
    y1 = Math.max(y1, p[i + 1]!);
  }
  return [x0, y0, x1, y1];
}

/** Drops repeated and straight-through corners and turns the ring counter-clockwise. `slack` is a distance. */
export function tidyFlat(p: Flat, slack: number): Flat {
  let pts: number[] = [...p];
  if (flatArea(p) < 0) {
    const back: number[] = [];
    for (let i = pts.length - 2; i >= 0; i -= 2) back.push(pts[i]!, pts[i + 1]!);
    pts = back;
  }
  for (let again = true; again && pts.length > 6;) {
    again = false;
    for (let i = 0; i < pts.length && pts.length > 6; i += 2) {
      const n = pts.length;
      const a = (i + n - 2) % n;
      const b = (i + 2) % n;
      const dx = pts[b]! - pts[a]!;
      const dy = pts[b + 1]! - pts[a + 1]!;
      const len = Math.hypot(dx, dy);
      const ex = pts[i]! - pts[a]!;
      const ey = pts[i + 1]! - pts[a + 1]!;
      const off = len > 0 ? Math.abs(dx * ey - dy * ex) / len : 0;
      if (
        Math.hypot(ex, ey) <= slack ||
        (len > 0 && off <= slack && dx * ex + dy * ey >= 0 && ex * ex + ey * ey <= len * len)
      ) {
        pts.splice(i, 2);
        again = true;
        i -= 2;
      }
    }
  }
  return Float64Array.from(pts);
}
