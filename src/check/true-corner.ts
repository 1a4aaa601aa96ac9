import type { DrawnPiece, Edge } from '../garment/index.ts';
import {
  cubicCount,
  lengthAtPlace,
  pathJoin,
  pathLength,
  pathSplit,
  placeAtLength,
  turn,
} from '../geometry/index.ts';
import type { Path } from '../geometry/index.ts';
import type { JointSide } from './corner.ts';
import { withEdge } from './rework.ts';

/** A line is bent towards its joint over this much of its end (trade.md 6.3: square for 1/4 to 1/2 in; more, so that it does not show). */
const REACH_MM = 30;
/** A handle that sweeps by so much moves the curve by 4/9 of that at most: the greatest value of 3 (1 − t)² t. */
const SWAY = 4 / 9;

/** By how much the line would move off its old place, mm, if its end were turned by so many degrees. */
export function swayOf(piece: DrawnPiece, side: JointSide, degrees: number): number {
  const reach = Math.min(REACH_MM, pathLength(piece.edges[side.lineEdge]!.path) / 3);
  return (SWAY * reach * Math.abs(degrees) * Math.PI) / 180 / 3;
}

/** The line's end turned about the corner so that the angle inside the piece grows by `degrees`; the corner and all beyond REACH_MM stay. */
export function turnLine(piece: DrawnPiece, side: JointSide, degrees: number): DrawnPiece {
  const edge = piece.edges[side.lineEdge]!;
  // Outlines turn counter-clockwise: opening the corner turns the edge that leaves it clockwise, the one that comes in counter-clockwise.
  const angle = ((side.lineStarts ? -degrees : degrees) * Math.PI) / 180;
  const path = side.lineStarts
    ? turnStart(edge.path, angle)
    : turnStart(edge.path.toReversed(), angle).toReversed();
  return withEdge(piece, side.lineEdge, keepPlaces(edge, path));
}

function turnStart(path: Path, angle: number): Path {
  const whole = pathLength(path);
  const reach = Math.min(REACH_MM, whole / 3);
  // The bend may end at a joint that is there already, so that truing twice does not cut the line ever finer.
  const first = cubicCount(path) > 1 ? lengthAtPlace(path, { cubic: 0, t: 1 }) : Infinity;
  const local = first <= reach * 1.5;
  const [near, rest] = local
    ? [path.slice(0, 4), path.slice(3)]
    : pathSplit(path, placeAtLength(path, reach));
  const at = near[0]!;
  const handle = turn({ x: near[1]!.x - at.x, y: near[1]!.y - at.y }, angle);
  return pathJoin([[at, { x: at.x + handle.x, y: at.y + handle.y }, ...near.slice(2)], rest]);
}

/** The same edge on a line bent by a hair: notches and crossings keep their walked distance from the nearer end. */
function keepPlaces(edge: Edge<'one'>, path: Path): Edge<'one'> {
  const before = pathLength(edge.path);
  const after = pathLength(path);
  const keep = (at: number): number =>
    after === 0
      ? at
      : at <= 0.5
        ? Math.min(1, (at * before) / after)
        : Math.max(0, 1 - ((1 - at) * before) / after);
  return {
    ...edge,
    path,
    notches: edge.notches.map((n) => ({ ...n, at: keep(n.at) })),
    crossings: edge.crossings.map((c) => ({ ...c, at: keep(c.at) })),
  };
}
