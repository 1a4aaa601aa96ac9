import {
  linePath,
  pathBetween,
  pathEnd,
  pathLength,
  pathStart,
  placeAtLength,
} from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { DrawnPiece, Edge, EdgeId } from '../../garment/index.ts';
import { Refusal } from '../words/refusal.ts';

/** Shares nearer to an edge's end than this are the corner itself: nothing is left to split. */
const LEAST_SHARE = 0.01;

/** The edge of a piece, or a Refusal `edge-missing`. */
export function edgeOf(piece: DrawnPiece, id: EdgeId): { edge: Edge<'one'>; index: number } {
  const index = piece.edges.findIndex((e) => e.id === id);
  const edge = piece.edges[index];
  if (!edge) throw new Refusal('edge-missing', { piece: piece.name, edge: id }, { piece: piece.id });
  return { edge, index };
}

/** An id that no edge of the piece has yet. */
export function freshId(piece: DrawnPiece, wanted: string): EdgeId {
  const taken = new Set([...piece.edges.map((e) => e.id), ...piece.darts.map((d) => d.id)]);
  if (!taken.has(wanted)) return wanted;
  let n = 2;
  while (taken.has(`${wanted}-${n}`)) n++;
  return `${wanted}-${n}`;
}

/** The two parts of an edge cut out between two shares of its length (equal: one cut). The first keeps the id. */
function parts(edge: Edge<'one'>, from: number, to: number, second: EdgeId): [Edge<'one'>, Edge<'one'>] {
  const size = pathLength(edge.path);
  const end = { cubic: (edge.path.length - 1) / 3 - 1, t: 1 };
  const first = pathBetween(edge.path, { cubic: 0, t: 0 }, placeAtLength(edge.path, from * size));
  const last = pathBetween(edge.path, placeAtLength(edge.path, to * size), end);
  const before = <T extends { readonly at: number }>(list: readonly T[]): T[] =>
    list.filter((x) => x.at <= from).map((x) => ({ ...x, at: x.at / from }));
  const after = <T extends { readonly at: number }>(list: readonly T[]): T[] =>
    list.filter((x) => x.at > to).map((x) => ({ ...x, at: (x.at - to) / (1 - to) }));
  return [
    { ...edge, path: first, notches: before(edge.notches), crossings: before(edge.crossings) },
    { ...edge, id: second, path: last, notches: after(edge.notches), crossings: after(edge.crossings) },
  ];
}

export interface Slit {
  readonly piece: DrawnPiece;
  /** The edge that was cut and the id of its second part. */
  readonly edge: EdgeId;
  readonly second: EdgeId;
  /** The new legs, first to second counter-clockwise. */
  readonly legs: readonly [EdgeId, EdgeId];
}

/**
 * Cuts from an edge to a point inside and draws the cut's two sides as dart legs: `intake` mm of the edge lie between their mouths (0: a slit).
 * The edge becomes two. Throws Refusal `no-room-for-dart` where the edge is too short there.
 */
export function openSlit(
  piece: DrawnPiece,
  edgeId: EdgeId,
  at: number,
  point: Point,
  name: { readonly id: string; readonly say: string; readonly level: string },
  intake = 0,
): Slit {
  const { edge, index } = edgeOf(piece, edgeId);
  const half = intake / 2 / Math.max(1e-9, pathLength(edge.path));
  const from = at - half;
  const to = at + half;
  if (from < LEAST_SHARE || to > 1 - LEAST_SHARE) {
    throw new Refusal(
      'no-room-for-dart',
      { piece: piece.name, edge: edge.name },
      { piece: piece.id, edge: edgeId },
    );
  }
  const second = freshId(piece, `${edgeId}-2`);
  const [first, last] = parts(edge, from, to, second);
  const legs = [freshId(piece, `${name.id}-a`), freshId(piece, `${name.id}-b`)] as const;
  const leg = (id: EdgeId, level: string, a: Point, b: Point): Edge<'one'> => ({
    id,
    name: name.say,
    kind: 'dart',
    path: linePath(a, b),
    from: level,
    crossings: [],
    allowance: edge.allowance,
    notches: [],
  });
  const a = pathEnd(first.path);
  const b = pathStart(last.path);
  const level = nearestLevel(edge, at);
  const cut = [
    first,
    leg(legs[0], level, a, point),
    leg(legs[1], name.level, point, b),
    { ...last, from: level },
  ];
  return { piece: { ...piece, edges: piece.edges.toSpliced(index, 1, ...cut) }, edge: edgeId, second, legs };
}

/** The level a new corner takes: of the nearest crossing or of the edge's start. */
function nearestLevel(edge: Edge<'one'>, at: number): string {
  let best = { level: edge.from, far: at };
  for (const c of edge.crossings) {
    const far = Math.abs(c.at - at);
    if (far < best.far) best = { level: c.level, far };
  }
  return best.level;
}
