import { pointsBox } from '../../../geometry/index.ts';
import type { Point } from '../../../geometry/index.ts';

/** Cells across and up, and directions in each. */
const ACROSS = 4;
const UP = 5;
const WAYS = 4;
/** Numbers in a shape. */
const SHAPE_SIZE = ACROSS * UP * WAYS;
/** Longest step along a line that still falls into the right cells, in heights of the letter. */
const STEP = 0.06;
/** How much other proportions count, for each factor e. */
const ASPECT = 0.2;
/** Signs of a shape written as a text. */
const SIGNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+-';
/** Steps in 1 of a share, and in 1 of an aspect. */
const SHARE_STEPS = 80;
const ASPECT_STEPS = 20;
/** A letter narrower than this share of its height (an `l`) is not drawn wide. */
const NARROWEST = 0.35;

/**
 * What a letter looks like, whatever its place and size: how much of its line runs which way in which part of its box.
 * A thick stroke's two sides run as its middle does, so that filled letters and those of single strokes compare.
 */
export interface Shape {
  /** Of unit length: the root of each share. */
  readonly shares: Float32Array;
  /** Width over height. */
  readonly aspect: number;
}

/** A quarter turn clockwise, `quarters` times: what stands on its right side then stands upright. */
export function quarterTurned({ x, y }: Point, quarters: number): Point {
  switch (((quarters % 4) + 4) % 4) {
    case 1:
      return { x: y, y: -x };
    case 2:
      return { x: -x, y: -y };
    case 3:
      return { x: -y, y: x };
    default:
      return { x, y };
  }
}

/** The shape of the lines of one letter, y up. */
export function shapeOf(lines: readonly (readonly Point[])[]): Shape {
  const box = pointsBox(lines.flat());
  const wide = box.maxX - box.minX;
  const high = box.maxY - box.minY;
  const across = Math.max(wide, NARROWEST * high, 1e-9);
  const up = Math.max(high, NARROWEST * wide, 1e-9);
  const left = (box.minX + box.maxX - across) / 2;
  const low = (box.minY + box.maxY - up) / 2;
  const sums = new Float32Array(SHAPE_SIZE);
  for (const line of lines)
    for (let i = 1; i < line.length; i++) {
      const ax = (line[i - 1]!.x - left) / across;
      const ay = (line[i - 1]!.y - low) / up;
      const dx = (line[i]!.x - left) / across - ax;
      const dy = (line[i]!.y - low) / up - ay;
      const long = Math.hypot(dx, dy);
      const steps = Math.ceil(long / STEP);
      // Which way it runs, either way being the same.
      const way = ((Math.atan2(dy, dx) / Math.PI + 2) % 1) * WAYS;
      for (let k = 0; k < steps; k++) {
        const t = (k + 0.5) / steps;
        spread(sums, ax + t * dx, ay + t * dy, way, long / steps);
      }
    }
  const sum = sums.reduce((all, v) => all + v, 0) || 1;
  return { shares: sums.map((v) => Math.sqrt(v / sum)), aspect: wide / Math.max(high, 1e-9) };
}

/** Shares a step out between the two nearest cells across and up and the two nearest ways. */
function spread(sums: Float32Array, x: number, y: number, way: number, weight: number): void {
  const cx = Math.min(ACROSS - 1, Math.max(0, x * ACROSS - 0.5));
  const cy = Math.min(UP - 1, Math.max(0, y * UP - 0.5));
  const [x0, y0, w0] = [Math.floor(cx), Math.floor(cy), Math.floor(way)];
  for (const [i, wx] of [
    [x0, 1 - (cx - x0)],
    [x0 + 1, cx - x0],
  ] as const)
    for (const [j, wy] of [
      [y0, 1 - (cy - y0)],
      [y0 + 1, cy - y0],
    ] as const)
      for (const [k, ww] of [
        [w0, 1 - (way - w0)],
        [w0 + 1, way - w0],
      ] as const)
        if (wx * wy > 0) {
          const at = (j * ACROSS + i) * WAYS + (k % WAYS);
          sums[at] = sums[at]! + weight * wx * wy * ww;
        }
}

/** How unlike two shapes are: 0 for the same, √2 for such as share nothing; other proportions count a little. */
export function unlikeness(a: Shape, b: Shape): number {
  let like = 0;
  for (let i = 0; i < SHAPE_SIZE; i++) like += a.shares[i]! * b.shares[i]!;
  const wider = Math.log(Math.max(0.2, a.aspect) / Math.max(0.2, b.aspect));
  return Math.sqrt(Math.max(0, 2 - 2 * like) + (ASPECT * wider) ** 2);
}

/** The shape in one sign for its aspect and one for each share; what `shapeFrom` reads. */
export function shapeText({ shares, aspect }: Shape): string {
  const sign = (v: number): string => SIGNS[Math.min(SIGNS.length - 1, Math.round(v))]!;
  return sign(aspect * ASPECT_STEPS) + Array.from(shares, (v) => sign(v * SHARE_STEPS)).join('');
}

/** The shape that `shapeText` wrote, each share within a hundredth. */
export function shapeFrom(text: string): Shape {
  const [aspect, ...shares] = Array.from(text, (sign) => SIGNS.indexOf(sign));
  const long = Math.hypot(...shares);
  return { aspect: aspect! / ASPECT_STEPS, shares: Float32Array.from(shares, (v) => v / long) };
}
