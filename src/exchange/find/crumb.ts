import { cubicCount } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';

/** A curve that stays this near to its start is a crumb, mm: what a page border leaves of a line that ends on it. */
const CRUMB_MM = 0.02;

/** A closed path without its crumbs: their direction is chance, and a fit that begins with one would wind. */
export function withoutCrumbs(path: Path): Path {
  const kept: Point[] = [path[0]!];
  for (let i = 0; i < cubicCount(path); i++) {
    const [a, ...rest] = path.slice(3 * i, 3 * i + 4) as [Point, Point, Point, Point];
    if (rest.every((p) => Math.hypot(p.x - a.x, p.y - a.y) < CRUMB_MM)) continue;
    const start = kept.at(-1)!;
    // What follows a crumb begins where the crumb began.
    const [b, ...after] = rest as [Point, Point, Point];
    kept.push({ x: b.x + start.x - a.x, y: b.y + start.y - a.y }, ...after);
  }
  if (kept.length < 4) return path;
  kept[kept.length - 1] = kept[0]!;
  return kept;
}
