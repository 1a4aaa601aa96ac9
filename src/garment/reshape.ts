import {
  CURVE_MM,
  cubicCount,
  distance,
  lengthAtPlace,
  lengthRuler,
  linePath,
  monotone,
  pathEnd,
  pathIsStraight,
  pathLength,
  pathStart,
  placeAtShare,
  placePoint,
  redrawPath,
  shareAtPlace,
} from '../geometry/index.ts';
import type { Monotone, Path, PathPlace, Point } from '../geometry/index.ts';
import { placeOnEdge } from './on-outline.ts';
import type { DrawnPiece, Edge, EdgeId, InnerLine } from './piece.ts';

/** How far a place on an edge moves. `at`: share (0..1) of the edge's arc length before the move. */
export interface Knot {
  readonly at: number;
  readonly by: Point;
}

/** What is moved on one outline. Corners by index: corner i is the start of edge i. Inner knots by edge. What is not named stays. */
export interface Moves {
  readonly corners: ReadonlyMap<number, Point>;
  readonly inner: ReadonlyMap<EdgeId, readonly Knot[]>;
  /** Edges that end in the moved corners already (they were cut back or drawn on) and stay as they are. */
  readonly done?: ReadonlySet<EdgeId>;
}

/** How far each place of a path moves: a smooth monotone run through the knots, by distance (mm) along the path. */
export function knotField(whole: number, knots: readonly Knot[]): (mm: number) => Point {
  const { dx, dy } = componentFields(whole, knots);
  return (mm) => ({ x: dx.value(mm), y: dy.value(mm) });
}

function componentFields(whole: number, knots: readonly Knot[]): { dx: Monotone; dy: Monotone } {
  const xs = knots.map((k) => k.at * whole);
  return {
    dx: monotone(
      xs,
      knots.map((k) => k.by.x),
    ),
    dy: monotone(
      xs,
      knots.map((k) => k.by.y),
    ),
  };
}

/** All knots of an edge in order, its ends included, no two in one place. */
export function edgeKnots(start: Point, end: Point, inner: readonly Knot[]): readonly Knot[] {
  return [
    { at: 0, by: start },
    ...inner.filter((k) => k.at > ONE_KNOT && k.at < 1 - ONE_KNOT).sort((p, q) => p.at - q.at),
    { at: 1, by: end },
  ].filter((k, i, all) => i === 0 || k.at - all[i - 1]!.at > ONE_KNOT);
}

const NOWHERE: Point = { x: 0, y: 0 };
/** Knots nearer than this share of the edge to one another are one. */
const ONE_KNOT = 1e-9;

const still = (v: Point): boolean => v.x === 0 && v.y === 0;

interface Moved {
  readonly edge: Edge<'one'>;
  /** Where a place of the old edge has gone. */
  readonly to: (old: PathPlace) => Point;
}

/**
 * The piece with corners and places of its edges moved: each edge goes smoothly over from knot to knot, never further than its knots
 * do, level at its ends (so that its directions at the corners stay), drawn within CURVE_MM; both edges at a corner follow it. A straight
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

function moveEdge(edge: Edge<'one'>, start: Point, end: Point, inner: readonly Knot[]): Moved {
  const { path } = edge;
  const straight =
    (edge.kind === 'dart' || edge.kind === 'fold' || inner.length === 0) && pathIsStraight(path);
  if (straight) return moveStraight(edge, start, end);

  const whole = pathLength(path);
  const knots = edgeKnots(start, end, inner);
  const { dx, dy } = componentFields(whole, knots);
  const breaks = knots.slice(1, -1).map((k) => placeAtShare(path, k.at));
  const ruler = lengthRuler(path);
  const drawn = redrawPath(
    path,
    (cubic, t) => displaced(path, cubic, t, ruler(cubic, t), dx, dy),
    breaks,
    CURVE_MM,
  );
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
  };
}

function displaced(
  path: Path,
  cubic: number,
  t: number,
  x: number,
  dx: Monotone,
  dy: Monotone,
): { point: Point; velocity: Point } {
  const i = cubic * 3;
  const a = path[i]!;
  const b = path[i + 1]!;
  const c = path[i + 2]!;
  const d = path[i + 3]!;
  const s = 1 - t;
  const w0 = s * s * s;
  const w1 = 3 * s * s * t;
  const w2 = 3 * s * t * t;
  const w3 = t * t * t;
  const vx = 3 * (s * s * (b.x - a.x) + 2 * s * t * (c.x - b.x) + t * t * (d.x - c.x));
  const vy = 3 * (s * s * (b.y - a.y) + 2 * s * t * (c.y - b.y) + t * t * (d.y - c.y));
  const speed = Math.hypot(vx, vy);
  return {
    point: {
      x: w0 * a.x + w1 * b.x + w2 * c.x + w3 * d.x + dx.value(x),
      y: w0 * a.y + w1 * b.y + w2 * c.y + w3 * d.y + dy.value(x),
    },
    velocity: { x: vx + dx.slope(x) * speed, y: vy + dy.slope(x) * speed },
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
