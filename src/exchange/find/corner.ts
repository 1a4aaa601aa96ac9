import {
  cubicCount,
  pathLength,
  pathReverse,
  placeAtLength,
  placePoint,
  pathsArea,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';

/** A corner of a closed outline: which point of it, and by how much it turns (left positive, radians). */
export interface Corner {
  /** Index of the cubic that starts here. */
  readonly cubic: number;
  readonly point: Point;
  readonly turn: number;
  /** mm along the outline from its start. */
  readonly at: number;
}

/** Directions are taken over this length on either side, so that flattened curves show none at their joints. */
const REACH_MM = 3;
/** A turn over this is a corner (22°). */
const CORNER = 0.38;
/** Corners nearer than this to one another are one corner. */
const ONE_MM = 2.5;

/** Counter-clockwise as the house keeps outlines. */
export const counterClockwise = (path: Path): Path => (pathsArea([path]) < 0 ? pathReverse(path) : path);

/** Corners of a closed outline in order. None for a smooth ring. */
export function outlineCorners(path: Path): Corner[] {
  const found = turnsOf(path).flatMap(({ near, ...corner }): Corner[] =>
    // A corner turns at its point; a tight curve turns only over its length.
    isCorner(corner.turn) && Math.abs(near) > CORNER * 0.8 ? [corner] : [],
  );
  return merged(found, pathLength(path));
}

export const isCorner = (turn: number): boolean => Math.abs(turn) > CORNER;

/** Where each cubic starts, with how far the outline turns there over a few millimetres and (`near`) at the point itself. */
export function turnsOf(path: Path): (Corner & { readonly near: number })[] {
  const n = cubicCount(path);
  const total = pathLength(path);
  const reach = Math.min(REACH_MM, total / 20);
  const at = (mm: number): Point => placePoint(path, placeAtLength(path, ((mm % total) + total) % total));
  let s = 0;
  return Array.from({ length: n }, (_, cubic) => {
    const point = path[3 * cubic]!;
    const turn = (by: number): number => turnBetween(at(s - by), point, at(s + by));
    const one = { cubic, point, turn: turn(reach), near: turn(reach * 0.15), at: s };
    s += pathLength(path.slice(3 * cubic, 3 * cubic + 4));
    return one;
  });
}

function turnBetween(a: Point, b: Point, c: Point): number {
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const vx = c.x - b.x;
  const vy = c.y - b.y;
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

/** Of corners close together the sharpest stays. */
function merged(corners: readonly Corner[], total: number): Corner[] {
  const apart = (a: Corner, b: Corner) => Math.min(Math.abs(a.at - b.at), total - Math.abs(a.at - b.at));
  const sharpest = corners.toSorted((a, b) => Math.abs(b.turn) - Math.abs(a.turn) || a.at - b.at);
  const kept: Corner[] = [];
  for (const corner of sharpest) if (kept.every((other) => apart(other, corner) > ONE_MM)) kept.push(corner);
  return kept.toSorted((a, b) => a.at - b.at);
}
