import {
  add,
  distance,
  lengthAtPlace,
  linePath,
  nearestPlace,
  pathAt,
  pathBetween,
  pathEnd,
  pathIsStraight,
  pathLength,
  pathStart,
  placeAtLength,
  sub,
} from '../../geometry/index.ts';
import type { Path, PathPlace, Point } from '../../geometry/index.ts';
import { REPEATS_MM } from '../../garment/index.ts';
import type { DrawnPiece, Edge, Follower } from '../../garment/index.ts';
import { anchorLevels } from '../move/anchor.ts';
import { levelsHeld, redrawEdge } from '../move/carry.ts';
import { pullEdge } from '../move/pull.ts';

/** Where a point on (or beside) the old edge has gone to on the new one. */
function displacement(before: Path, after: Path, p: Point): Point {
  const { place, point } = nearestPlace(before, p);
  if (before.length === after.length) {
    const t = place.t;
    const s = 1 - t;
    const weight = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    let x = -point.x;
    let y = -point.y;
    for (let k = 0; k < 4; k++) {
      const q = after[place.cubic * 3 + k]!;
      x += weight[k]! * q.x;
      y += weight[k]! * q.y;
    }
    return { x, y };
  }
  const size = pathLength(before);
  return sub(pathAt(after, size > 0 ? lengthAtPlace(before, place) / size : 0), point);
}

/** Two edges whose corners are that near repeat each other over their whole length; a follower is drawn in register with its parent. */
const repeats = (own: Path, parent: Path): boolean =>
  distance(pathStart(own), pathStart(parent)) < REPEATS_MM &&
  distance(pathEnd(own), pathEnd(parent)) < REPEATS_MM;

interface Pair {
  readonly own: Edge<'one'>;
  readonly before: Edge<'one'>;
  readonly after: Edge<'one'>;
}

function pairsOf(
  before: DrawnPiece,
  after: DrawnPiece,
  follower: DrawnPiece,
  edges: Follower['edges'],
): Pair[] {
  return edges.flatMap((pair) => {
    const own = follower.edges.find((e) => e.id === pair.own);
    const old = before.edges.find((e) => e.id === pair.parent);
    const now = after.edges.find((e) => e.id === pair.parent);
    return own && old && now && old.path !== now.path ? [{ own, before: old, after: now }] : [];
  });
}

/**
 * The follower after its parent's edges were drawn elsewhere: an edge that repeats the whole of a parent's edge becomes the parent's new one,
 * one that repeats part of it (or runs beside it) moves as that part moved, and the edges between follow their corners.
 */
export function follow(
  before: DrawnPiece,
  after: DrawnPiece,
  follower: DrawnPiece,
  edges: Follower['edges'],
): DrawnPiece {
  const marked = followMarks(before, after, follower);
  const pairs = pairsOf(before, after, marked, edges);
  return pairs.length === 0 ? marked : followEdges(marked, pairs);
}

/** Marks that repeat a parent's mark (same id, same place) go where it went. */
function followMarks(before: DrawnPiece, after: DrawnPiece, follower: DrawnPiece): DrawnPiece {
  if (before.marks === after.marks) return follower;
  let moved = false;
  const marks = follower.marks.map((mark) => {
    const old = before.marks.find((m) => m.id === mark.id);
    const now = after.marks.find((m) => m.id === mark.id);
    if (!old || !now || old === now || distance(old.at, mark.at) > REPEATS_MM) return mark;
    moved = true;
    return { ...mark, at: now.at };
  });
  return moved ? { ...follower, marks } : follower;
}

/** The place on the new line where a place of the old one has gone: the same cubic, or the same share of the length where it was cut into others. */
function placeOn(before: Path, after: Path, place: PathPlace): PathPlace {
  if (before.length === after.length) return place;
  const size = pathLength(before);
  const share = size > 0 ? lengthAtPlace(before, place) / size : 0;
  return placeAtLength(after, share * pathLength(after));
}

/**
 * An edge that repeats part of a parent's: the same part of the parent's new line, between its own corners.
 * Undefined where it runs beside it or the other way.
 */
function partOf(
  own: Edge<'one'>,
  { before, after }: Pair,
  start: Point,
  end: Point,
): Edge<'one'> | undefined {
  const on = [0, 0.25, 0.5, 0.75, 1].map((share) => nearestPlace(before.path, pathAt(own.path, share)));
  if (on.some((near) => near.distance > REPEATS_MM)) return undefined;
  const [from, to] = [on[0]!.place, on[4]!.place];
  if (from.cubic + from.t >= to.cubic + to.t) return undefined;
  const [first, last] = [from, to].map((p) => placeOn(before.path, after.path, p)) as [PathPlace, PathPlace];
  const path = [start, ...pathBetween(after.path, first, last).slice(1, -1), end];
  const old = pathBetween(before.path, from, to);
  return levelsHeld(
    own,
    old.length === path.length ? redrawEdge(own, { before: old, after: path }) : { ...own, path },
  );
}

/** Levels of an edge that became its parent's: where the parent has them. */
const asParent = (own: Edge<'one'>, parent: Edge<'one'>): Edge<'one'>['crossings'] =>
  own.crossings.map((c) => parent.crossings.find((p) => p.level === c.level) ?? c);

function followEdges(follower: DrawnPiece, pairs: readonly Pair[]): DrawnPiece {
  const n = follower.edges.length;
  const corner: (Point | undefined)[] = Array.from({ length: n }, () => undefined);
  const set = (i: number, by: Point, sure: boolean): void => {
    if (sure || !corner[i % n]) corner[i % n] = by;
  };
  // A whole repeat knows its corners exactly; parts fill in what is left.
  const whole = new Map(pairs.filter((p) => repeats(p.own.path, p.before.path)).map((p) => [p.own.id, p]));
  for (const [i, edge] of follower.edges.entries()) {
    const pair = whole.get(edge.id);
    if (!pair) continue;
    set(i, sub(pathStart(pair.after.path), pathStart(edge.path)), true);
    set(i + 1, sub(pathEnd(pair.after.path), pathEnd(edge.path)), true);
  }
  for (const pair of pairs) {
    if (whole.has(pair.own.id)) continue;
    const i = follower.edges.indexOf(pair.own);
    set(i, displacement(pair.before.path, pair.after.path, pathStart(pair.own.path)), false);
    set(i + 1, displacement(pair.before.path, pair.after.path, pathEnd(pair.own.path)), false);
  }
  const still = { x: 0, y: 0 };
  const drawn = follower.edges.map((edge, i) => {
    const pair = whole.get(edge.id);
    if (pair) {
      const path = pair.after.path;
      return edge.path.length === path.length
        ? levelsHeld(edge, redrawEdge(edge, { before: edge.path, after: path }))
        : { ...edge, path, crossings: asParent(edge, pair.after) };
    }
    const [start, end] = [corner[i] ?? still, corner[(i + 1) % n] ?? still];
    const part = pairs.find((p) => p.own.id === edge.id);
    const piece = part && partOf(edge, part, add(pathStart(edge.path), start), add(pathEnd(edge.path), end));
    if (piece) return piece;
    const drawn = pullEdge(edge, [
      { at: 0, by: start, smooth: false },
      { at: 1, by: end, smooth: false },
    ]);
    // Part of a fold that was ruled straight is ruled straight too.
    return edge.kind === 'fold' && part && pathIsStraight(part.after.path)
      ? levelsHeld(edge, { ...drawn, path: linePath(pathStart(drawn.path), pathEnd(drawn.path)) })
      : drawn;
  });
  return anchorLevels(follower, { ...follower, edges: drawn });
}
