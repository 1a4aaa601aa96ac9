import type { DrawnPiece, Edge, Garment, Knot, Moves } from '../garment/index.ts';
import { reshapePiece } from '../garment/index.ts';
import {
  cubicCount,
  cubicOf,
  dot,
  lengthAtPlace,
  linePath,
  pathEnd,
  pathIsStraight,
  pathJoin,
  pathLength,
  pathSplit,
  pathStart,
  placeAtLength,
  placeTangent,
  scale,
  unit,
} from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';

/** A corner's move dies out along an edge no nearer than this, so that it never shows as a kink. */
const TAPER_MM = 40;

/** The garment with one piece in place of its former self. */
export function withPiece(garment: Garment, piece: DrawnPiece): Garment {
  return { ...garment, pieces: garment.pieces.map((p) => (p.id === piece.id ? piece : p)) };
}

/** The piece with one edge in place of its former self. */
export function withEdge(piece: DrawnPiece, index: number, edge: Edge<'one'>): DrawnPiece {
  return { ...piece, edges: piece.edges.map((e, i) => (i === index ? edge : e)) };
}

/** Knots at which a corner's move has died out along the two edges that meet there; `skip` names one that needs none. */
function dyingOut(piece: DrawnPiece, corner: number, skip?: number): Moves['inner'] {
  const n = piece.edges.length;
  const inner = new Map<string, readonly Knot[]>();
  for (const [index, fromEnd] of [
    [(corner + n - 1) % n, true],
    [corner, false],
  ] as const) {
    const edge = piece.edges[index]!;
    if (index === skip || edge.kind === 'dart' || edge.kind === 'fold' || pathIsStraight(edge.path)) continue;
    const at = stillAt(edge.path, fromEnd);
    if (at !== undefined) inner.set(edge.id, [{ at, by: { x: 0, y: 0 } }]);
  }
  return inner;
}

/**
 * One corner moved, both its edges following: straight ones stay straight, on curved ones the move dies out at the first joint beyond
 * TAPER_MM (at the far corner where there is none), so that truing adds no cubics. A corner on a fold only moves along the fold.
 */
export function moveCorner(piece: DrawnPiece, corner: number, by: Point): DrawnPiece {
  const n = piece.edges.length;
  let move = by;
  for (const edge of [piece.edges[(corner + n - 1) % n]!, piece.edges[corner]!]) {
    if (edge.kind !== 'fold') continue;
    const along = unit({
      x: pathEnd(edge.path).x - pathStart(edge.path).x,
      y: pathEnd(edge.path).y - pathStart(edge.path).y,
    });
    move = scale(along, dot(move, along));
  }
  return reshapePiece(piece, { corners: new Map([[corner, move]]), inner: dyingOut(piece, corner) });
}

/**
 * An edge drawn on along itself (`by` > 0) or cut back, at its end or its start; nothing else of it changes, so no width elsewhere
 * does. The line that crosses there follows the corner. Where that line is a fold the corner slides along it instead.
 */
export function extendEdge(piece: DrawnPiece, index: number, atEnd: boolean, by: number): DrawnPiece {
  const n = piece.edges.length;
  const edge = piece.edges[index]!;
  const corner = atEnd ? (index + 1) % n : index;
  const old = pathStart(piece.edges[corner]!.path);
  const path = atEnd ? drawOn(edge.path, by) : drawOn(edge.path.toReversed(), by).toReversed();
  const now = atEnd ? pathEnd(path) : pathStart(path);
  const move = { x: now.x - old.x, y: now.y - old.y };
  const line = piece.edges[atEnd ? corner : (index + n - 1) % n]!;
  if (line.kind === 'fold') return moveCorner(piece, corner, move);
  const before = pathLength(edge.path);
  const after = pathLength(path);
  const keep = (at: number): number => {
    const mm = atEnd ? at * before : after - (1 - at) * before;
    return Math.min(1, Math.max(0, mm / after));
  };
  const extended = withEdge(piece, index, {
    ...edge,
    path,
    notches: edge.notches.map((notch) => ({ ...notch, at: keep(notch.at) })),
    crossings: edge.crossings.map((c) => ({ ...c, at: keep(c.at) })),
  });
  return reshapePiece(extended, {
    corners: new Map([[corner, move]]),
    inner: dyingOut(piece, corner, index),
    done: new Set([edge.id]),
  });
}

/** The path drawn on at its end, or cut back. Its last cubic goes on as the curve that it is; a cubic too short for that is left and a straight one added. */
function drawOn(path: Path, by: number): Path {
  const whole = pathLength(path);
  if (by < 0) return pathSplit(path, placeAtLength(path, Math.max(whole / 2, whole + by)))[0];
  const count = cubicCount(path);
  const last = cubicOf(path, count - 1);
  const own = whole - (count > 1 ? lengthAtPlace(path, { cubic: count - 2, t: 1 }) : 0);
  const tip = placeTangent(path, { cubic: count - 1, t: 1 });
  if (by > own / 3) {
    const end = pathEnd(path);
    return pathJoin([path, linePath(end, { x: end.x + tip.x * by, y: end.y + tip.y * by })]);
  }
  const speed = 3 * Math.hypot(last[3].x - last[2].x, last[3].y - last[2].y);
  const t = 1 + by / Math.max(speed, own);
  return [...path.slice(0, 3 * (count - 1)), ...blossomPart(last, t)];
}

/** The cubic from 0 to t, t > 1 going on beyond its end (de Casteljau holds there as well). */
function blossomPart([a, b, c, d]: readonly [Point, Point, Point, Point], t: number): Point[] {
  const mix = (p: Point, q: Point): Point => ({ x: p.x + (q.x - p.x) * t, y: p.y + (q.y - p.y) * t });
  const ab = mix(a, b);
  const bc = mix(b, c);
  const abc = mix(ab, bc);
  return [a, ab, abc, mix(abc, mix(bc, mix(c, d)))];
}

/** Share of the path at its first joint at least TAPER_MM from that end; undefined where it has none. */
function stillAt(path: Path, fromEnd: boolean): number | undefined {
  const whole = pathLength(path);
  const count = cubicCount(path);
  for (let k = 1; k < count; k++) {
    const joint = fromEnd ? count - k : k;
    const along = lengthAtPlace(path, { cubic: joint - 1, t: 1 });
    if ((fromEnd ? whole - along : along) >= TAPER_MM) return along / whole;
  }
  return undefined;
}
