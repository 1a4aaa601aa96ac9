import {
  cubicCount,
  dot,
  leastSquares,
  length,
  pathLength,
  pathReverse,
  perp,
  shareAtPlace,
  sub,
  unit,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { pointsAtShares } from '../find/even.ts';

/** What leaves a straight line by more is surely no longer part of it, mm: a line that somebody redrew as a curve runs a tenth or two beside it. */
const STRAIGHT_MM = 0.3;
/** Shorter than this a run has no direction to go by, mm. */
const LEAST_MM = 40;
/** The line is laid through this share of what seems straight: a line through all of it leans into the curve. */
const SURE = 0.85;
/** Departures from the line by which the beginning of the curve is found, mm: more than a redrawn line's, little enough that the curve is still simple. */
const OFF_MM: readonly [number, number] = [0.3, 12];
/** The joint of a line and a long curve so near to where the bend seems to begin is where it was drawn to begin, mm. */
const JOINT_MM = 1;
/** Places looked at. */
const LOOKS = 800;

/**
 * Share of a path's length at which it begins to bend, straight from its start (or, `fromEnd`, from its end); null where it is not straight there.
 * The eye, and a bound, see a bend only where it has gone some way: a curve that leaves a line as a circle does is off it by the square of the way. So the way is
 * taken as a polynomial of the root of the departure, fitted over the first 12 mm of it, and asked for where the departure is nothing.
 */
export function straightEnd(path: Path, fromEnd = false): number | null {
  if (fromEnd) {
    const share = straightEnd(pathReverse(path));
    return share === null ? null : 1 - share;
  }
  const points = pointsAtShares(
    path,
    Array.from({ length: LOOKS + 1 }, (_, i) => i / LOOKS),
  );
  const start = points[0]!;
  const seems = straightPart(points);
  const sure = Math.floor(SURE * seems);
  const chord = sub(points[sure]!, start);
  if (length(chord) < LEAST_MM) return null;
  if (seems === LOOKS) return 1;
  const along = unit(chord);
  const across = perp(along);
  const laid = points.map((point) => {
    const from = sub(point, start);
    return { x: dot(from, along), y: dot(from, across) };
  });
  const line = leastSquares(
    laid.slice(0, sure + 1).map(({ x }) => [1, x]),
    laid.slice(0, sure + 1).map(({ y }) => y),
  ) ?? [0, 0];
  const rows: number[][] = [];
  const ways: number[] = [];
  for (const { x, y } of laid.slice(sure)) {
    const off = Math.abs(y - line[0]! - line[1]! * x);
    if (off > OFF_MM[1]) break;
    if (off < OFF_MM[0]) continue;
    const root = Math.sqrt(off);
    // Weighed by the root: the same noise tells less the smaller the departure is.
    rows.push([root, root ** 2, root ** 3, root ** 4]);
    ways.push(x * root);
  }
  const way = (rows.length > 4 && leastSquares(rows, ways)?.[0]) || length(sub(points[seems]!, start));
  return way < LEAST_MM ? null : jointNear(path, Math.min(1, way / pathLength(path)));
}

/** How many of the points lie on one line with the first. */
function straightPart(points: readonly Point[]): number {
  let last = 1;
  for (let i = 2; i < points.length; i++) {
    const to = sub(points[i]!, points[0]!);
    const across = perp(unit(to));
    const off = [0.25, 0.5, 0.75].map((share) =>
      Math.abs(dot(sub(points[Math.round(i * share)]!, points[0]!), across)),
    );
    if (Math.max(...off) > STRAIGHT_MM) break;
    last = i;
  }
  return last;
}

/** The share of the joint next to a place, where one is near that a curve was drawn from; else the place itself. Joints of a line in many bits say nothing. */
function jointNear(path: Path, share: number): number {
  const whole = pathLength(path);
  const joints = Array.from({ length: cubicCount(path) }, (_, i) => shareAtPlace(path, { cubic: i, t: 1 }));
  return (
    joints.find(
      (joint, i) =>
        Math.abs(joint - share) * whole <= JOINT_MM && ((joints[i + 1] ?? joint) - joint) * whole >= LEAST_MM,
    ) ?? share
  );
}
