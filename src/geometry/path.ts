import { cubicCount, cubicOf, cubicPart, straightCubic } from './cubic.ts';
import { SAME_MM } from './tolerance.ts';
import type { Motion, Path, PathPlace, Point } from './types.ts';
import { distance, dot, sub } from './vector.ts';

/** First point of the path. */
export const pathStart = (path: Path): Point => path[0]!;
/** Last point of the path. */
export const pathEnd = (path: Path): Point => path[path.length - 1]!;

/** The straight path from p to q. */
export const linePath = (p: Point, q: Point): Path => straightCubic(p, q);

/** The straight-sided path through the points (at least two); its corners stay corners. */
export function polylinePath(points: readonly Point[]): Path {
  const out: Point[] = [points[0]!];
  for (let i = 1; i < points.length; i++) out.push(...straightCubic(points[i - 1]!, points[i]!).slice(1));
  return out;
}

/** The same curve walked from its end. */
export const pathReverse = (path: Path): Path => path.toReversed();

/**
 * One path out of several, each starting where the one before ends.
 * Throws a RangeError when two do not meet within SAME_MM: a gap closed in silence would be a wrong seam.
 */
export function pathJoin(paths: readonly Path[]): Path {
  const first = paths[0];
  if (!first) throw new RangeError('pathJoin needs at least one path');
  if (paths.length === 1) return first;
  const out: Point[] = [...first];
  for (let i = 1; i < paths.length; i++) {
    const next = paths[i]!;
    const gap = distance(out[out.length - 1]!, next[0]!);
    if (gap > SAME_MM) throw new RangeError(`path ${i} starts ${gap} mm from where the one before ends`);
    for (let k = 1; k < next.length; k++) out.push(next[k]!);
  }
  return out;
}

/** The point after the motion: mirrored first (x flipped), then turned, then moved. */
export function movePoint(point: Point, motion: Motion): Point {
  const x = motion.mirror ? -point.x : point.x;
  if (motion.angle === 0) return { x: x + motion.dx, y: point.y + motion.dy };
  const c = Math.cos(motion.angle);
  const s = Math.sin(motion.angle);
  return { x: x * c - point.y * s + motion.dx, y: x * s + point.y * c + motion.dy };
}

/** The path after the motion. A mirrored path keeps its order of points, so an outline made of them turns clockwise. */
export const pathMove = (path: Path, motion: Motion): Path => path.map((p) => movePoint(p, motion));

/** The point mirrored across the line through `at` along `direction` (any length but zero). */
export function reflectPoint(point: Point, at: Point, direction: Point): Point {
  const d = dot(direction, direction);
  const along = dot(sub(point, at), direction) / d;
  return {
    x: 2 * (at.x + direction.x * along) - point.x,
    y: 2 * (at.y + direction.y * along) - point.y,
  };
}

/** The path mirrored across a line; its order of points stays. */
export const pathReflect = (path: Path, at: Point, direction: Point): Path =>
  path.map((p) => reflectPoint(p, at, direction));

/** The motion that turns by `angle` about `centre` and leaves it where it is. */
export function turnAbout(centre: Point, angle: number): Motion {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return {
    angle,
    dx: centre.x - (centre.x * c - centre.y * s),
    dy: centre.y - (centre.x * s + centre.y * c),
  };
}

/**
 * The path before and after a place. At the very start (or end) the empty side is a cubic of no length,
 * so that both halves are always paths.
 */
export function pathSplit(path: Path, place: PathPlace): [Path, Path] {
  const n = cubicCount(path);
  const t = Math.min(1, Math.max(0, place.t));
  if (t === 0 || t === 1) {
    const at = 3 * (place.cubic + t);
    const p = path[at]!;
    return [at === 0 ? [p, p, p, p] : path.slice(0, at + 1), at === 3 * n ? [p, p, p, p] : path.slice(at)];
  }
  const cubic = cubicOf(path, place.cubic);
  const before = cubicPart(cubic, 0, t);
  const after = cubicPart(cubic, t, 1);
  const i = place.cubic * 3;
  return [
    [...path.slice(0, i), ...before],
    [...after, ...path.slice(i + 4)],
  ];
}

/** The part of the path between two places, the first not after the second. */
export function pathBetween(path: Path, from: PathPlace, to: PathPlace): Path {
  const out: Point[] = [];
  for (let i = from.cubic; i <= to.cubic; i++) {
    const t0 = i === from.cubic ? from.t : 0;
    const t1 = i === to.cubic ? to.t : 1;
    if (t1 <= t0) continue;
    const part = cubicPart(cubicOf(path, i), t0, t1);
    for (let k = out.length === 0 ? 0 : 1; k < 4; k++) out.push(part[k]!);
  }
  if (out.length > 0) return out;
  const p = cubicPart(cubicOf(path, from.cubic), from.t, 1)[0];
  return [p, p, p, p];
}
