import type { Box, Point } from '../../geometry/index.ts';

/** How the table is seen: `k` screen px per mm; the table point (x, y), y up, lies at the screen's upper left corner. */
export interface Camera {
  readonly x: number;
  readonly y: number;
  readonly k: number;
}
export interface Frame {
  readonly width: number;
  readonly height: number;
}
const K_MIN = 0.02;
const K_MAX = 12;

export const toScreen = (c: Camera, p: Point): Point => ({ x: (p.x - c.x) * c.k, y: (c.y - p.y) * c.k });
export const toTable = (c: Camera, p: Point): Point => ({ x: c.x + p.x / c.k, y: c.y - p.y / c.k });

/** Shows the whole box with a little room. */
export function showBox(box: Box, frame: Frame): Camera {
  const k =
    Math.min(frame.width / (box.maxX - box.minX || 1), frame.height / (box.maxY - box.minY || 1)) * 0.96;
  const mid = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return { k, x: mid.x - frame.width / 2 / k, y: mid.y + frame.height / 2 / k };
}

export const pan = (c: Camera, dx: number, dy: number): Camera => ({
  ...c,
  x: c.x - dx / c.k,
  y: c.y + dy / c.k,
});

/** Nearer or farther about a screen point, which stays where it is. */
export function zoom(c: Camera, by: number, about: Point): Camera {
  const k = Math.min(K_MAX, Math.max(K_MIN, c.k * by));
  const still = toTable(c, about);
  return { k, x: still.x - about.x / k, y: still.y + about.y / k };
}
