import { STRAIGHT_MM } from './tolerance.ts';
import type { Path, Point } from './types.ts';
import { lerp } from './vector.ts';

/** One cubic Bézier. The single cubics of a path are taken out of it with `cubicOf`. */
export type Cubic = readonly [Point, Point, Point, Point];

/** How many cubics the path has. */
export const cubicCount = (path: Path): number => (path.length - 1) / 3;

/** The `index`-th cubic of the path. */
export function cubicOf(path: Path, index: number): Cubic {
  const i = index * 3;
  return [path[i]!, path[i + 1]!, path[i + 2]!, path[i + 3]!];
}

/** Point of the cubic at parameter t. */
export function cubicPoint(cubic: Cubic, t: number): Point {
  const a = cubic[0];
  const b = cubic[1];
  const c = cubic[2];
  const d = cubic[3];
  const s = 1 - t;
  const w0 = s * s * s;
  const w1 = 3 * s * s * t;
  const w2 = 3 * s * t * t;
  const w3 = t * t * t;
  return { x: w0 * a.x + w1 * b.x + w2 * c.x + w3 * d.x, y: w0 * a.y + w1 * b.y + w2 * c.y + w3 * d.y };
}

/** First derivative by t. */
export function cubicVelocity(cubic: Cubic, t: number): Point {
  const a = cubic[0];
  const b = cubic[1];
  const c = cubic[2];
  const d = cubic[3];
  const s = 1 - t;
  const w0 = 3 * s * s;
  const w1 = 6 * s * t;
  const w2 = 3 * t * t;
  return {
    x: w0 * (b.x - a.x) + w1 * (c.x - b.x) + w2 * (d.x - c.x),
    y: w0 * (b.y - a.y) + w1 * (c.y - b.y) + w2 * (d.y - c.y),
  };
}

/** Second derivative by t. */
export function cubicAcceleration(cubic: Cubic, t: number): Point {
  const a = cubic[0];
  const b = cubic[1];
  const c = cubic[2];
  const d = cubic[3];
  const s = 1 - t;
  return {
    x: 6 * (s * (a.x - 2 * b.x + c.x) + t * (b.x - 2 * c.x + d.x)),
    y: 6 * (s * (a.y - 2 * b.y + c.y) + t * (b.y - 2 * c.y + d.y)),
  };
}

/** De Casteljau: the parts before and after t. */
export function cubicSplit(cubic: Cubic, t: number): [Cubic, Cubic] {
  const a = cubic[0];
  const d = cubic[3];
  const ab = lerp(a, cubic[1], t);
  const bc = lerp(cubic[1], cubic[2], t);
  const cd = lerp(cubic[2], d, t);
  const abc = lerp(ab, bc, t);
  const bcd = lerp(bc, cd, t);
  const at = lerp(abc, bcd, t);
  return [
    [a, ab, abc, at],
    [at, bcd, cd, d],
  ];
}

/** The part from t0 to t1, t0 ≤ t1. */
export function cubicPart(cubic: Cubic, t0: number, t1: number): Cubic {
  if (t0 <= 0 && t1 >= 1) return cubic;
  if (t0 <= 0) return cubicSplit(cubic, t1)[0];
  const after = cubicSplit(cubic, t0)[1];
  return t1 >= 1 ? after : cubicSplit(after, (t1 - t0) / (1 - t0))[0];
}

/** A straight run at even speed: controls at the thirds. Most pattern edges are such, and all verbs take a short cut on them. */
export function cubicIsStraight(cubic: Cubic): boolean {
  const a = cubic[0];
  const b = cubic[1];
  const c = cubic[2];
  const d = cubic[3];
  return (
    Math.abs(3 * b.x - 2 * a.x - d.x) <= STRAIGHT_MM &&
    Math.abs(3 * b.y - 2 * a.y - d.y) <= STRAIGHT_MM &&
    Math.abs(3 * c.x - a.x - 2 * d.x) <= STRAIGHT_MM &&
    Math.abs(3 * c.y - a.y - 2 * d.y) <= STRAIGHT_MM
  );
}

/** The straight cubic from a to d. */
export function straightCubic(a: Point, d: Point): Cubic {
  return [
    a,
    { x: (2 * a.x + d.x) / 3, y: (2 * a.y + d.y) / 3 },
    { x: (a.x + 2 * d.x) / 3, y: (a.y + 2 * d.y) / 3 },
    d,
  ];
}
