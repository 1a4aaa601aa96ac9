import {
  cubicCount,
  distance,
  linePath,
  nearestPlace,
  pathBetween,
  pathEnd,
  pathIntersections,
  pathJoin,
  pathLength,
  pathPart,
  pathStart,
  placeTangent,
} from '../../geometry/index.ts';
import type { Path, PathPlace, Point } from '../../geometry/index.ts';
import { PhotoError } from './camera.ts';
import type { Plane } from './plane.ts';
import { traceAlong } from './trace.ts';

/** The other sizes of a traced outline, nearest to the guide first. */
export interface TracedSizes {
  /** By size, then by run; each run starts where the one before ends. */
  readonly sizes: readonly (readonly Path[])[];
  /** Runs (by place in the guide) along which no further line was seen: all sizes share the guide's. */
  readonly shared: readonly number[];
}

/** Lines are not looked for this near to a corner, where the neighbours' lines run, mm. */
const CLEAR_MM = 8;

/**
 * Finds `count` further sizes with the first as a guide: along each of its runs the dark lines within `from` to `to` mm outwards (negative
 * inwards), and their corners where neighbours meet. `guide`: the runs of a closed outline, counter-clockwise.
 * Throws PhotoError where fewer lines than `count` are seen along a run that has some.
 */
export function traceSizes(
  plane: Plane,
  guide: readonly Path[],
  from: number,
  to: number,
  count: number,
): TracedSizes {
  const found = guide.map((run) => {
    const length = pathLength(run);
    const clear = Math.min(CLEAR_MM, length / 4) / length;
    return traceAlong(plane, pathPart(run, clear, 1 - clear), from, to);
  });
  const shared = found.flatMap((lines, i) => (lines.length === 0 ? [i] : []));
  found.forEach((lines, i) => {
    if (lines.length > 0 && lines.length < count)
      throw new PhotoError(
        `Along run ${i + 1} of the traced outline ${lines.length} further lines are seen, not ${count}. Trace that size by hand.`,
      );
  });
  if (shared.length === guide.length)
    throw new PhotoError('No further lines are seen beside the traced outline. Trace the sizes one by one.');
  const reach = 2 * Math.max(Math.abs(from), Math.abs(to)) + 2 * CLEAR_MM;
  const sizes = Array.from({ length: count }, (_, k) => {
    const runs = found.map((lines, i) => lengthened(lines[k] ?? guide[i]!, reach));
    const corners = runs.map((run, i) => {
      const before = (i + runs.length - 1) % runs.length;
      return meeting(runs[before]!, run, pathStart(guide[i]!));
    });
    return runs.map((run, i) => between(run, corners[i]!, corners[(i + 1) % runs.length]!));
  });
  return { sizes, shared };
}

/** The run with a straight piece added at both ends. */
function lengthened(run: Path, by: number): Path {
  const out = (at: Point, way: Point, sign: number): Point => {
    const d = Math.hypot(way.x, way.y) || 1;
    return { x: at.x + (sign * by * way.x) / d, y: at.y + (sign * by * way.y) / d };
  };
  const end: PathPlace = { cubic: cubicCount(run) - 1, t: 1 };
  const a = out(pathStart(run), placeTangent(run, { cubic: 0, t: 0 }), -1);
  const b = out(pathEnd(run), placeTangent(run, end), 1);
  return pathJoin([linePath(a, pathStart(run)), run, linePath(pathEnd(run), b)]);
}

/** Where two lengthened runs meet, nearest to the guide's corner; half way between them where they do not. */
function meeting(before: Path, after: Path, corner: Point): Point {
  const met = pathIntersections(before, after)
    .map((hit) => hit.point)
    .toSorted((a, b) => distance(a, corner) - distance(b, corner))[0];
  if (met) return met;
  const p = nearestPlace(before, corner).point;
  const q = nearestPlace(after, corner).point;
  return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
}

function between(run: Path, start: Point, end: Point): Path {
  const part = pathBetween(run, nearestPlace(run, start).place, nearestPlace(run, end).place);
  return [start, ...part.slice(1, -1), end];
}
