import { distance, pathFlatten } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { Grey } from './image.ts';

export const WIDTH = 1600;
export const HEIGHT = 1200;

/** Deterministic noise (mulberry32), roughly normal by adding four. */
export function noise(seed: number): () => number {
  let a = seed;
  const one = () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return () => (one() + one() + one() + one() - 2) * Math.sqrt(3);
}

/** A picture of a white sheet of so many mm. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly wide: number;
  readonly high: number;
  /** Focal length, px. */
  readonly focal: number;
  /** How high the camera stands over the middle of the sheet, mm. */
  readonly above: number;
}
const FRAME: Frame = { width: WIDTH, height: HEIGHT, wide: 500, high: 400, focal: 1700, above: 900 };

/** mm on the table to px: the camera looks down, tilted. */
export function pinHole(k1: number, k2: number, tilt = 0.18, frame = FRAME) {
  const { width, height, wide, high, focal, above } = frame;
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const [cz, sz] = [Math.cos(0.06), Math.sin(0.06)];
  return (mm: Point): Point => {
    const X = (mm.x - wide / 2) * cz - (mm.y - high / 2) * sz;
    const Y = -((mm.x - wide / 2) * sz + (mm.y - high / 2) * cz);
    const Z = above - Y * s;
    const x = X / Z;
    const y = (Y * c) / Z;
    const r2 = x * x + y * y;
    const d = 1 + k1 * r2 + k2 * r2 * r2;
    return { x: width / 2 + focal * x * d, y: height / 2 + focal * y * d };
  };
}

export type Drawn = { readonly path: Path; readonly width: number };

/** Renders lines on a white sheet lying on dark ground, through the camera, by distance to the drawn lines. */
export function photograph(
  camera: (mm: Point) => Point,
  lines: readonly Drawn[],
  sigma: number,
  frame = FRAME,
): Grey {
  const { width: across, height: down, wide, high } = frame;
  const data = new Float32Array(across * down).fill(60);
  const inside = [
    { x: 0, y: 0 },
    { x: wide, y: 0 },
    { x: wide, y: high },
    { x: 0, y: high },
  ];
  const rim: Point[] = inside.flatMap((a, i) => {
    const b = inside[(i + 1) % 4]!;
    return Array.from({ length: 100 }, (_, k) =>
      camera({ x: a.x + ((b.x - a.x) * k) / 100, y: a.y + ((b.y - a.y) * k) / 100 }),
    );
  });
  for (let y = 0; y < down; y++) {
    // Four sub-rows with exact horizontal coverage: a soft, true rim.
    for (const sub of [-0.375, -0.125, 0.125, 0.375]) {
      const xs: number[] = [];
      rim.forEach((p, i) => {
        const q = rim[(i + 1) % rim.length]!;
        if (p.y > y + sub !== q.y > y + sub) xs.push(p.x + ((y + sub - p.y) / (q.y - p.y)) * (q.x - p.x));
      });
      xs.sort((a, b) => a - b);
      for (let k = 0; k + 1 < xs.length; k += 2) {
        for (let x = Math.max(0, Math.floor(xs[k]!)); x <= Math.min(across - 1, Math.ceil(xs[k + 1]!)); x++) {
          const cover = Math.max(0, Math.min(xs[k + 1]!, x + 0.5) - Math.max(xs[k]!, x - 0.5));
          data[y * across + x]! += (170 * Math.min(1, cover)) / 4;
        }
      }
    }
  }
  const inked = new Float32Array(across * down);
  for (const { path, width } of lines) {
    const points = pathFlatten(path, 0.02).flatMap((p, i, all) => {
      const q = all[i + 1];
      if (!q) return [p];
      const n = Math.max(1, Math.ceil(distance(p, q) / 0.15));
      return Array.from({ length: n }, (_, k) => ({
        x: p.x + ((q.x - p.x) * k) / n,
        y: p.y + ((q.y - p.y) * k) / n,
      }));
    });
    for (const mm of points) {
      const p = camera(mm);
      const half = distance(camera({ x: mm.x + width / 2, y: mm.y }), p);
      for (let y = Math.floor(p.y - half - 2); y <= p.y + half + 2; y++) {
        for (let x = Math.floor(p.x - half - 2); x <= p.x + half + 2; x++) {
          if (x < 0 || y < 0 || x >= across || y >= down) continue;
          const ink = Math.min(1, Math.max(0, half + 0.5 - Math.hypot(x - p.x, y - p.y)));
          const at = y * across + x;
          if (ink > inked[at]!) inked[at] = ink;
        }
      }
    }
  }
  inked.forEach((ink, at) => {
    if (ink > 0) data[at] = data[at]! * (1 - ink) + 40 * ink;
  });
  const random = noise(7);
  return { width: across, height: down, data: Uint8ClampedArray.from(data, (v) => v + sigma * random()) };
}
