import { orient2d } from 'robust-predicates';
import type { Point } from './types.ts';

/** Vector verbs over plain points; all pure, lengths in mm, y up. */

export const add = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const sub = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const scale = (a: Point, by: number): Point => ({ x: a.x * by, y: a.y * by });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
/** z of the cross product: positive when `b` lies counter-clockwise of `a`. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
/** √(x² + y²) as it stands: Math.hypot guards against an overflow that no garment reaches, and is many times slower. */
export const norm = (x: number, y: number): number => Math.sqrt(x * x + y * y);
export const length = (a: Point): number => norm(a.x, a.y);
export const distance = (a: Point, b: Point): number => norm(a.x - b.x, a.y - b.y);
/** `a` at share 0, `b` at share 1; beyond outside of 0..1. */
export const lerp = (a: Point, b: Point, share: number): Point => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});
/** The vector at length 1; a zero vector stays zero, so that no NaN is born here. */
export function unit(a: Point): Point {
  const l = norm(a.x, a.y);
  return l > 0 ? { x: a.x / l, y: a.y / l } : { x: 0, y: 0 };
}
/** Turned a quarter counter-clockwise: the left-hand side of a direction. */
export const perp = (a: Point): Point => ({ x: -a.y, y: a.x });
/** Turned by `angle` radians counter-clockwise about the origin. */
export function turn(a: Point, angle: number): Point {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return { x: a.x * c - a.y * s, y: a.x * s + a.y * c };
}
/** Angle from `a` to `b` in radians, counter-clockwise positive, in −π..π. */
export const angleBetween = (a: Point, b: Point): number => Math.atan2(cross(a, b), dot(a, b));

/**
 * Which side of the line a→b the point c lies on: positive = left (counter-clockwise), 0 = exactly on it.
 * The sign is exact. robust-predicates speaks of a y axis that points down; ours points up, hence the minus.
 */
export const side = (a: Point, b: Point, c: Point): number => -orient2d(a.x, a.y, b.x, b.y, c.x, c.y);
