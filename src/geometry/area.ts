import { cubicCount } from './cubic.ts';
import type { Path, Point, Ring } from './types.ts';
import { side } from './vector.ts';

/** Signed area in mm², counter-clockwise positive (shoelace about the first point, which keeps the digits). */
export function ringArea(ring: Ring): number {
  const o = ring[0];
  if (!o) return 0;
  let sum = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const p = ring[i]!;
    const q = ring[i + 1]!;
    sum += (p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x);
  }
  return sum / 2;
}

/**
 * Signed area inside the closed outline made of the paths, mm². Exact for cubics: Green's theorem, ½∮(x dy − y dx) of a cubic
 * in closed form by the cross products of its control points.
 */
export function pathsArea(paths: readonly Path[]): number {
  const o = paths[0]?.[0];
  if (!o) return 0;
  let sum = 0;
  for (const path of paths) {
    for (let k = 0; k < cubicCount(path); k++) {
      const ax = path[3 * k]!.x - o.x;
      const ay = path[3 * k]!.y - o.y;
      const bx = path[3 * k + 1]!.x - o.x;
      const by = path[3 * k + 1]!.y - o.y;
      const cx = path[3 * k + 2]!.x - o.x;
      const cy = path[3 * k + 2]!.y - o.y;
      const dx = path[3 * k + 3]!.x - o.x;
      const dy = path[3 * k + 3]!.y - o.y;
      sum +=
        2 * (ax * by - ay * bx) +
        (ax * cy - ay * cx) +
        (ax * dy - ay * dx) / 3 +
        (bx * cy - by * cx) +
        (bx * dy - by * dx) +
        2 * (cx * dy - cy * dx);
    }
  }
  return 0.15 * sum;
}

/** Is the point inside the ring (even-odd)? A point exactly on its border counts as inside. Signs are exact. */
export function ringContains(ring: Ring, point: Point): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[j]!;
    const b = ring[i]!;
    if (a.y > point.y !== b.y > point.y) {
      const s = side(a, b, point);
      if (s === 0) return true;
      if (s > 0 === b.y > a.y) inside = !inside;
    } else if (a.y === point.y && b.y === point.y) {
      if (Math.min(a.x, b.x) <= point.x && point.x <= Math.max(a.x, b.x)) return true;
    } else if ((a.y === point.y && a.x === point.x) || (b.y === point.y && b.x === point.x)) return true;
  }
  return inside;
}
