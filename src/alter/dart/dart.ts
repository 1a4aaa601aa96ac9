import {
  angleBetween,
  distance,
  linePath,
  pathAt,
  pathEnd,
  pathStart,
  sub,
  unit,
} from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import { hasRole } from '../../garment/index.ts';
import type { Dart, DrawnPiece, EdgeId } from '../../garment/index.ts';
import { hingePart } from '../move/hinge.ts';
import { pullEdges } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';
import { extendEdge } from '../move/trim.ts';
import { edgeOf, freshId, openSlit } from '../move/split-edge.ts';

/** A dart's place on the outline. */
export interface DartPlace {
  readonly dart: Dart;
  /** Numbers of its legs in the outline. */
  readonly first: number;
  readonly second: number;
  /** Mouth of the first leg, the point, mouth of the second leg: counter-clockwise. */
  readonly a: Point;
  readonly point: Point;
  readonly b: Point;
  /** Between its legs, radians, positive when open. */
  readonly angle: number;
}

/** Finds a dart; Refusal `dart-missing` when the piece has none of that id (or, for an empty id, none at all). */
export function dartOf(piece: DrawnPiece, id: string): DartPlace {
  const dart = id === '' ? piece.darts[0] : piece.darts.find((d) => d.id === id);
  if (!dart) {
    throw new Refusal('dart-missing', { piece: piece.name, dart: id }, { piece: piece.id });
  }
  const { edge: one, index: first } = edgeOf(piece, dart.legs[0]);
  const { edge: two, index: second } = edgeOf(piece, dart.legs[1]);
  const point = pathEnd(one.path);
  const a = pathStart(one.path);
  const b = pathEnd(two.path);
  return { dart, first, second, a, point, b, angle: angleBetween(sub(a, point), sub(b, point)) };
}

/** Width of a dart at its mouth, straight across. */
export const dartIntake = (place: DartPlace): number => distance(place.a, place.b);

export interface MadeDart {
  readonly piece: DrawnPiece;
  readonly dart: Dart;
  /** The edge it was opened in, and the id of that edge's second part. */
  readonly edge: EdgeId;
  readonly second: EdgeId;
}

/** A dart drawn into an edge at a share of its length, to a point inside, taking `intake` mm out of the edge. Legs are made equal. */
export function makeDart(
  piece: DrawnPiece,
  edge: EdgeId,
  at: number,
  point: Point,
  intake: number,
  name: { readonly id: string; readonly say: string; readonly serves: string },
): MadeDart {
  const id = freshId(piece, name.id);
  const slit = openSlit(piece, edge, at, point, { id, say: name.say, level: name.serves }, intake);
  const dart: Dart = { id, name: name.say, legs: slit.legs, foldToward: 'first', serves: name.serves };
  const made = { ...slit.piece, darts: [...slit.piece.darts, dart] };
  return { piece: intake === 0 ? made : trueDart(made, id), dart, edge, second: slit.second };
}

/** Both legs brought to the same length, half the difference each, along themselves; the edges beside them follow. */
export function trueDart(piece: DrawnPiece, id: string): DrawnPiece {
  const { dart, a, point, b } = dartOf(piece, id);
  const la = distance(a, point);
  const lb = distance(b, point);
  const by = (lb - la) / 2;
  if (Math.abs(by) < 1e-9) return piece;
  const ua = unit(sub(a, point));
  const ub = unit(sub(b, point));
  return pullEdges(piece, [
    { edge: dart.legs[0], at: 0, by: { x: ua.x * by, y: ua.y * by } },
    { edge: dart.legs[1], at: 1, by: { x: -ub.x * by, y: -ub.y * by } },
  ]);
}

/** A rotated dart; `slit` is the piece with the new place cut but nothing turned yet, for what follows its edges. */
export interface RotatedDart extends MadeDart {
  readonly closed: boolean;
  readonly slit: DrawnPiece;
}

/** Edge numbers from `from` (included) counter-clockwise to `to` (left out). */
function run(n: number, from: number, to: number): number[] {
  const out: number[] = [];
  for (let i = from; i !== to; i = (i + 1) % n) out.push(i);
  return out;
}

/**
 * A dart closed by a share of its angle about its own point, and as much opened at another place of the outline: rotated (share 1) or split.
 * The part that holds the centre (or a fold) stays. Every other edge keeps its length; a dart closed wholly leaves the outline.
 */
export function rotateDart(
  piece: DrawnPiece,
  id: string,
  to: { readonly edge: EdgeId; readonly at: number },
  share: number,
  name: { readonly id: string; readonly say: string },
): RotatedDart {
  const old = dartOf(piece, id);
  if (to.edge === old.dart.legs[0] || to.edge === old.dart.legs[1]) {
    throw new Refusal('dart-into-itself', { piece: piece.name }, { piece: piece.id });
  }
  const target = edgeOf(piece, to.edge).edge;
  const made = makeDart(piece, to.edge, to.at, old.point, 0, { ...name, serves: old.dart.serves });
  const n = made.piece.edges.length;
  const now = dartOf(made.piece, id);
  const slit = dartOf(made.piece, made.dart.id);
  // Run Y: from the old dart's second mouth to the new slit; run X: from the slit to the old dart's first mouth.
  const y = run(n, (now.second + 1) % n, slit.first);
  const x = run(n, (slit.second + 1) % n, now.first);
  const holds = (edges: readonly number[]): boolean =>
    edges.some((i) => made.piece.edges[i]!.kind === 'fold' || hasRole(made.piece.edges[i]!, 'centre'));
  const moveY = !holds(y) || (holds(x) && x.length > y.length);
  const moving = new Set(moveY ? [...y, slit.first, now.second] : [...x, slit.second, now.first]);
  const mouth = pathAt(target.path, to.at);
  const turned = hingePart(made.piece, {
    hinge: old.point,
    mouth: moveY ? middleOf(now) : mouth,
    other: moveY ? mouth : middleOf(now),
    angle: (moveY ? -1 : 1) * old.angle * share,
    edgePart: (i) => (moving.has(i) ? 1 : 0),
  });
  const settled = matched(turned, n);
  if (share < 1) return { ...made, piece: settled, closed: false, slit: made.piece };
  return { ...made, piece: withoutDart(settled, id), closed: true, slit: made.piece };
}

const middleOf = (d: DartPlace): Point => ({ x: (d.a.x + d.b.x) / 2, y: (d.a.y + d.b.y) / 2 });

/** Corners made one again after a turn: an edge starts exactly where the one before ends, to the last digit. */
function matched(piece: DrawnPiece, n: number): DrawnPiece {
  return {
    ...piece,
    edges: piece.edges.map((edge, i) => {
      const end = pathEnd(piece.edges[(i + n - 1) % n]!.path);
      return end === pathStart(edge.path) ? edge : { ...edge, path: [end, ...edge.path.slice(1)] };
    }),
  };
}

/** The dart and its legs taken out of an outline in which they lie closed. */
function withoutDart(piece: DrawnPiece, id: string): DrawnPiece {
  const { dart } = dartOf(piece, id);
  const edges = piece.edges.filter((e) => e.id !== dart.legs[0] && e.id !== dart.legs[1]);
  return matched({ ...piece, edges, darts: piece.darts.filter((d) => d.id !== id) }, edges.length);
}

/** A dart no longer sewn: its legs leave the outline and the edge runs straight over its mouth, longer by its intake. */
export function fillDart(piece: DrawnPiece, id: string): DrawnPiece {
  const d = dartOf(piece, id);
  const n = piece.edges.length;
  const before = piece.edges[(d.first + n - 1) % n]!;
  const after = piece.edges[(d.second + 1) % n]!;
  const middle = middleOf(d);
  const edges = piece.edges.flatMap((edge) => {
    if (edge.id === d.dart.legs[0] || edge.id === d.dart.legs[1]) return [];
    if (edge === before) return [extendEdge(edge, 'end', linePath(d.a, middle))];
    if (edge === after) return [extendEdge(edge, 'start', linePath(middle, d.b))];
    return [edge];
  });
  return matched({ ...piece, edges, darts: piece.darts.filter((x) => x.id !== id) }, edges.length);
}
