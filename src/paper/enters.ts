import type { Point } from '../geometry/index.ts';

/** Does the segment come into the upright box (Liang & Barsky 1984)? */
export function enters(p: Point, q: Point, x0: number, y0: number, x1: number, y1: number): boolean {
  let [from, to] = [0, 1];
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  for (const [step, room] of [
    [-dx, p.x - x0],
    [dx, x1 - p.x],
    [-dy, p.y - y0],
    [dy, y1 - p.y],
  ] as const) {
    if (step === 0) {
      if (room < 0) return false;
    } else if (step < 0) from = Math.max(from, room / step);
    else to = Math.min(to, room / step);
  }
  return from <= to;
}
