import type { Point } from '../geometry/index.ts';

/** Does the segment come into the upright box, its border counting? First by boxes, which settles nearly all, then by the corners' sides. */
export function enters(p: Point, q: Point, x0: number, y0: number, x1: number, y1: number): boolean {
  if (p.x < x0 && q.x < x0) return false;
  if (p.x > x1 && q.x > x1) return false;
  if (p.y < y0 && q.y < y0) return false;
  if (p.y > y1 && q.y > y1) return false;
  // The boxes overlap: apart only if all four corners lie on one side of the segment's line.
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const a = dx * (y0 - p.y) - dy * (x0 - p.x);
  const b = dx * (y0 - p.y) - dy * (x1 - p.x);
  const c = dx * (y1 - p.y) - dy * (x0 - p.x);
  const d = dx * (y1 - p.y) - dy * (x1 - p.x);
  return !((a > 0 && b > 0 && c > 0 && d > 0) || (a < 0 && b < 0 && c < 0 && d < 0));
}
