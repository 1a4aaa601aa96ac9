import {
  CURVE_MM,
  cubicCount,
  distance,
  lengthAtPlace,
  linePath,
  pathEnd,
  pathIsStraight,
  pathLength,
  pathStart,
  placeAtShare,
  placePoint,
  redrawPath,
  scale,
  shareAtPlace,
} from '../../geometry/index.ts';
import type { Path, PathPlace, Point } from '../../geometry/index.ts';
import { placeOnEdge } from './on-outline.ts';
import type { DrawnPiece, Edge, EdgeId, InnerLine } from '../piece.ts';
import { Taper, edgeKnots } from './taper.ts';
import type { Knot } from './taper.ts';

/** What is moved on one outline. Corners by index: corner i is the start of edge i. Inner knots by edge. What is not named stays. */
export interface Moves {
  readonly corners: ReadonlyMap<number, Point>;
  readonly inner: ReadonlyMap<EdgeId, readonly Knot[]>;
  /** Edges that end in the moved corners already (they were cut back or drawn on) and stay as they are. */
  readonly done?: ReadonlySet<EdgeId>;
}

const NOWHERE: Point = { x: 0, y: 0 };
/** Moved curves are drawn to this: the way back may halve a span that the way there did not, and still has to come home within 0.02 mm. */
const DRAWN_MM = CURVE_MM / 3;
const still = (v: Point): boolean => v.x === 0 && v.y === 0;

interface Moved {
  readonly edge: Edge<'one'>;
  /** Where a place of the old edge has gone. */
  readonly to: (old: PathPlace) => Point;
  /** Which share of the old edge's length a share of the new one's has come from. */
  readonly origin: (at: number) => number;
}

/**
 * The piece with corners and places of its edges moved: each edge goes smoothly over from knot to knot, never further than its knots
 * do, level at its ends (so that its directions at the corners stay), drawn within DRAWN_MM; both edges at a corner follow it. A straight
 * edge of which only the ends move stays straight, folds and dart legs always. Notches and level crossings go with their place on the
 * line; on a straight edge with one end moved they keep their walked distance from the other. Inner lines drawn to the outline stay on it.
 */
export function reshapePiece(piece: DrawnPiece, moves: Moves): DrawnPiece {
  const n = piece.edges.length;
  const corner = (i: number): Point => moves.corners.get(i % n) ?? NOWHERE;
  const moved = piece.edges.map((edge, i): Moved | null => {
    if (moves.done?.has(edge.id)) return null;
    const knots = moves.inner.get(edge.id) ?? [];
    if (still(corner(i)) && still(corner(i + 1)) && knots.every((k) => still(k.by))) return null;
    return moveEdge(edge, corner(i), corner(i + 1), knots);
  });
  if (moved.every((m) => m === null)) return piece;
  return {
    ...piece,
    edges: piece.edges.map((edge, i) => moved[i]?.edge ?? edge),
    lines: piece.lines.map((line) => (line.kind === 'grain' ? line : followOutline(piece, line, moved))),
  };
}

/** The line of one edge when its ends and inner knots move, as `reshapePiece` draws it. */
export function movedPath(edge: Edge<'one'>, start: Point, end: Point, inner: readonly Knot[]): Path {
  if (still(start) && still(end) && inner.every((k) => still(k.by))) return edge.path;
  return moveEdge({ ...edge, notches: [], crossings: [] }, start, end, inner).edge.path;
}

/** The line half way of a move of one edge, and which share of the edge's length a share of that line's stands for. */
export function lineHalfWay(
  edge: Edge<'one'>,
  start: Point,
  end: Point,
  inner: readonly Knot[],
): { readonly path: Path; readonly origin: (at: number) => number } {
  const half = inner.map(({ at, by }) => ({ at, by: scale(by, 0.5) }));
  const moved = moveEdge({ ...edge, notches: [], crossings: [] }, scale(start, 0.5), scale(end, 0.5), half);
  return { path: moved.edge.path, origin: moved.origin };
}

function moveEdge(edge: Edge<'one'>, start: Point, end: Point, inner: readonly Knot[]): Moved {
  const { path } = edge;
  const straight =
    (edge.kind === 'dart' || edge.kind === 'fold' || inner.length === 0) && pathIsStraight(path);
  if (straight) return moveStraight(edge, start, end);

  const taper = new Taper(path, edgeKnots(start, end, inner));
  const drawn = redrawPath(path, taper.write, taper.breaks, DRAWN_MM);
  const pinned = pinEnds(drawn.path, plus(pathStart(path), start), plus(pathEnd(path), end));
  const share = (at: number): number => shareAtPlace(pinned, drawn.place(placeAtShare(path, at)));
  return {
    edge: {
      ...edge,
      path: pinned,
      notches: edge.notches.map((notch) => ({ ...notch, at: share(notch.at) })),
      crossings: edge.crossings.map((c) => ({ ...c, at: share(c.at) })),
    },
    to: (old) => placePoint(pinned, drawn.place(old)),
    origin: (at) => shareAtPlace(path, drawn.origin(placeAtShare(pinned, at))),
  };
}

function moveStraight(edge: Edge<'one'>, start: Point, end: Point): Moved {
  const before = pathLength(edge.path);
  const path = linePath(plus(pathStart(edge.path), start), plus(pathEnd(edge.path), end));
  const after = pathLength(path);
  const keep = (at: number): number => {
    if (after === 0) return at;
    if (still(start)) return Math.min(1, (at * before) / after);
    if (still(end)) return Math.max(0, 1 - ((1 - at) * before) / after);
    return at;
  };
  const count = cubicCount(edge.path);
  return {
    edge: {
      ...edge,
      path,
      notches: edge.notches.map((notch) => ({ ...notch, at: keep(notch.at) })),
      crossings: edge.crossings.map((c) => ({ ...c, at: keep(c.at) })),
    },
    to: (old) => {
      // Several cubics in a row may make one straight edge; length is what they share.
      const u = count === 1 ? old.t : lengthAtPlace(edge.path, old) / before;
      const a = pathStart(path);
      const d = pathEnd(path);
      return { x: a.x + (d.x - a.x) * u, y: a.y + (d.y - a.y) * u };
    },
    origin: (at) => at,
  };
}

const plus = (p: Point, v: Point): Point => (still(v) ? p : { x: p.x + v.x, y: p.y + v.y });

/** A corner is one point for both its edges, to the last digit. */
function pinEnds(path: Path, start: Point, end: Point): Path {
  return [start, ...path.slice(1, -1), end];
}

function followOutline(
  piece: DrawnPiece,
  line: InnerLine<'one'>,
  moved: readonly (Moved | null)[],
): InnerLine<'one'> {
  const a = pathStart(line.path);
  const d = pathEnd(line.path);
  const start = newPlaceOf(piece, a, d, moved);
  const end = newPlaceOf(piece, d, a, moved);
  if (!start && !end) return line;
  return { ...line, path: stretchPath(line.path, start ?? a, end ?? d) };
}

/** Where a point on the old outline lies on the new one; undefined inside the piece or where the outline there did not move. */
function newPlaceOf(
  piece: DrawnPiece,
  point: Point,
  towards: Point,
  moved: readonly (Moved | null)[],
): Point | undefined {
  let best = Infinity;
  let found: Point | undefined;
  // Only edges that moved can take the line's end along; at a corner both its edges have the same new place.
  piece.edges.forEach((edge, i) => {
    const own = moved[i];
    const near = own && placeOnEdge(edge.path, point, towards);
    if (!near || near.distance >= best) return;
    best = near.distance;
    found = own.to(near.place);
  });
  return found && distance(found, point) > 0 ? found : undefined;
}

/** The path moved so that it starts and ends at the given points, what lies between going along in proportion. */
export function stretchPath(path: Path, start: Point, end: Point): Path {
  const a = pathStart(path);
  const d = pathEnd(path);
  const dx0 = start.x - a.x;
  const dy0 = start.y - a.y;
  const dx1 = end.x - d.x;
  const dy1 = end.y - d.y;
  if (dx0 === 0 && dy0 === 0 && dx1 === 0 && dy1 === 0) return path;
  const last = path.length - 1;
  return path.map((p, i) => {
    const u = i / last;
    return { x: p.x + dx0 + (dx1 - dx0) * u, y: p.y + dy0 + (dy1 - dy0) * u };
  });
}
