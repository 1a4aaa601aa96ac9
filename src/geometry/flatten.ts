import { cubicCount, cubicIsStraight } from './cubic.ts';
import type { Path, Point, Ring } from './types.ts';
import { norm } from './vector.ts';

/**
 * The path as a polyline, both ends included, nowhere further than `tolerance` mm from the curve. The stored points stay exactly.
 * Steps per cubic by the bound |B″|·h²/8 (Wang's formula; Goldman, Pyramid Algorithms, 2003).
 */
export function pathFlatten(path: Path, tolerance: number): Point[] {
  const out: Point[] = [path[0]!];
  const n = cubicCount(path);
  for (let k = 0; k < n; k++) {
    const a = path[3 * k]!;
    const b = path[3 * k + 1]!;
    const c = path[3 * k + 2]!;
    const d = path[3 * k + 3]!;
    if (!cubicIsStraight([a, b, c, d])) {
      const bend = Math.max(
        norm(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y),
        norm(b.x - 2 * c.x + d.x, b.y - 2 * c.y + d.y),
      );
      const steps = Math.ceil(Math.sqrt((0.75 * bend) / tolerance));
      for (let i = 1; i < steps; i++) {
        const t = i / steps;
        const s = 1 - t;
        const w0 = s * s * s;
        const w1 = 3 * s * s * t;
        const w2 = 3 * s * t * t;
        const w3 = t * t * t;
        out.push({
          x: w0 * a.x + w1 * b.x + w2 * c.x + w3 * d.x,
          y: w0 * a.y + w1 * b.y + w2 * c.y + w3 * d.y,
        });
      }
    }
    out.push(d);
  }
  return out;
}

/** The closed outline made of the paths, each starting where the one before ends, as a ring. */
export function pathsRing(paths: readonly Path[], tolerance: number): Ring {
  const out: Point[] = [];
  for (const path of paths) {
    const points = pathFlatten(path, tolerance);
    for (let i = 0; i + 1 < points.length; i++) out.push(points[i]!);
  }
  return out;
}
