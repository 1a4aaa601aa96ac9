import { sideOf, pieceAt } from '../../garment/index.ts';
import type { DrawnPiece, Edge, EdgeRef, Garment } from '../../garment/index.ts';
import {
  movePoint,
  pathLength,
  pathReverse,
  placeAtLength,
  placePoint,
  placeTangent,
  type Motion,
  type Path,
  type Point,
} from '../../geometry/index.ts';
import { moveWay, seatOn } from './seat.ts';

/** One edge of a line that runs through: its piece as it lies, and the edge in the direction of the line. */
export interface RunLeg {
  readonly piece: DrawnPiece;
  readonly edge: Edge<'one'>;
  readonly motion: Motion;
  readonly forward: boolean;
}
/** Where the line crosses a seam, and by how many degrees it turns there (0: it runs straight on; positive: to the left). */
export interface RunJoin {
  readonly seam: string;
  readonly name: string;
  readonly at: Point;
  readonly turn: number;
}
/** A line over several pieces put edge to edge: hem, neckline, armhole, or a seam that meets the next one. */
export interface RunThrough {
  readonly id: string;
  readonly name: string;
  readonly legs: readonly RunLeg[];
  /** Between leg i and leg i + 1; in a closed line the last leads back to the first leg. */
  readonly joins: readonly RunJoin[];
  readonly closed: boolean;
  readonly length: number;
}

const STILL: Motion = { angle: 0, dx: 0, dy: 0 };
/** No garment of ours has more pieces round a line; a pattern that joins itself in circles ends here. */
const MOST_LEGS = 40;

const wayPath = (edge: Edge<'one'>, forward: boolean): Path => (forward ? edge.path : pathReverse(edge.path));
const ends = (path: Path): { first: Point; start: Point; last: Point; end: Point } => {
  const [a, b] = [placeAtLength(path, 0), placeAtLength(path, pathLength(path))];
  return {
    first: placePoint(path, a),
    start: placeTangent(path, a),
    last: placePoint(path, b),
    end: placeTangent(path, b),
  };
};

/** The edge sewn to one end of an edge: which edge of which piece, at which of its ends, by which seam. */
interface Met {
  readonly seam: { readonly id: string; readonly name: string };
  readonly ref: EdgeRef;
  readonly atStart: boolean;
}

/** What meets the start (or end) of an edge in the seams of the garment; undefined where nothing does, or only the middle of another edge. */
function met(garment: Garment, piece: string, edge: string, atStart: boolean): Met | undefined {
  for (const seam of garment.seams) {
    for (const [own, other] of [
      [seam.a, seam.b],
      [seam.b, seam.a],
    ] as const) {
      const i = own.findIndex((r) => r.piece === piece && r.edge === edge);
      if (i < 0) continue;
      // The ends of a chain meet; within it, corners meet when both sides have as many legs.
      const early = atStart !== Boolean(own[i]!.backwards);
      const corner = early ? i : i + 1;
      const k =
        corner === 0
          ? 0
          : corner === own.length
            ? other.length
            : own.length === other.length
              ? corner
              : undefined;
      const ref = k === undefined ? undefined : other[early ? k : k - 1];
      if (!ref || (ref.piece === piece && ref.edge === edge)) continue;
      return { seam, ref, atStart: early !== Boolean(ref.backwards) };
    }
  }
  return undefined;
}

/** The next leg after `leg`, put edge to edge with it, and the join; undefined where the line ends. */
function onward(garment: Garment, leg: RunLeg): { leg: RunLeg; join: RunJoin } | undefined {
  const { edges } = leg.piece;
  const i = edges.indexOf(leg.edge);
  const crossing = edges.at((i + (leg.forward ? 1 : -1)) % edges.length)!;
  if (crossing.kind === 'fold') return undefined;
  const found = met(garment, leg.piece.id, crossing.id, leg.forward);
  const piece = found && pieceAt(garment, found.ref.piece);
  const m = piece?.edges.findIndex((e) => e.id === found?.ref.edge) ?? -1;
  if (!found || !piece || m < 0) return undefined;
  const own = ends(wayPath(crossing, leg.forward));
  const theirs = ends(wayPath(piece.edges[m]!, found.atStart));
  const at = movePoint(own.first, leg.motion);
  // Seen from the corner, each piece lies to one side of the seam: left when its edge is walked as drawn. They must lie on opposite sides.
  const left = leg.forward !== Boolean(leg.motion.mirror);
  const motion = seatOn(
    theirs.first,
    theirs.start,
    at,
    moveWay(own.start, leg.motion),
    found.atStart === left,
  );
  const edge = piece.edges.at((m + (found.atStart ? -1 : 1)) % piece.edges.length)!;
  const next: RunLeg = { piece, edge, motion, forward: !found.atStart };
  const a = moveWay(ends(wayPath(leg.edge, leg.forward)).end, leg.motion);
  const b = moveWay(ends(wayPath(edge, next.forward)).start, motion);
  const turn = (Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y) * 180) / Math.PI;
  return { leg: next, join: { seam: found.seam.id, name: found.seam.name, at, turn } };
}

const keyOf = (leg: RunLeg): string => `${leg.piece.id}/${leg.edge.id}`;

/** Follows the line from an edge to where it ends, or round to where it began. */
function follow(garment: Garment, from: RunLeg): { legs: RunLeg[]; joins: RunJoin[]; closed: boolean } {
  const legs = [from];
  const joins: RunJoin[] = [];
  while (legs.length < MOST_LEGS) {
    const next = onward(garment, legs.at(-1)!);
    if (!next) break;
    const back = legs.findIndex((l) => keyOf(l) === keyOf(next.leg));
    if (back > 0) break;
    joins.push(next.join);
    if (back === 0) return { legs, joins, closed: true };
    legs.push(next.leg);
  }
  return { legs, joins, closed: false };
}

/** Most lines are named alike on every piece; `armhole, upper` and `armhole, lower` are one armhole. */
function nameOf(legs: readonly RunLeg[]): string {
  const words = [...new Set(legs.map((l) => l.edge.name.split(',')[0]!.trim()))];
  const plain = words.slice(0, 2).join(' and ');
  const { piece } = legs[0]!;
  const cloth = piece.cloth === 'shell' ? '' : `, ${piece.cloth}`;
  const side = legs.every((l) => sideOf(l.piece) === sideOf(piece)) ? sideOf(piece) : undefined;
  return `${plain[0]!.toUpperCase()}${plain.slice(1)}${side ? `, ${side}` : ''}${cloth}`;
}

/** Every line of the garment that runs over a seam: open edges (hem, neckline) first, then edges that are themselves sewn, the shell before its lining. */
export function runsThrough(garment: Garment): readonly RunThrough[] {
  const seen = new Set<string>();
  const runs: RunThrough[] = [];
  for (const piece of garment.pieces) {
    for (const edge of piece.edges) {
      if (edge.kind === 'fold' || edge.kind === 'dart' || seen.has(`${piece.id}/${edge.id}`)) continue;
      // First back to where the line begins, then all of it from there.
      const back = follow(garment, { piece, edge, motion: STILL, forward: false });
      const first = back.closed ? back.legs[0]! : back.legs.at(-1)!;
      const { legs, joins, closed } = follow(garment, {
        ...first,
        motion: STILL,
        forward: !first.forward,
      });
      for (const leg of legs) seen.add(keyOf(leg));
      if (joins.length === 0) continue;
      const length = legs.reduce((sum, l) => sum + pathLength(l.edge.path), 0);
      runs.push({ id: keyOf(legs[0]!), name: nameOf(legs), legs, joins, closed, length });
    }
  }
  const rank = (r: RunThrough): number =>
    (r.legs[0]!.piece.cloth === 'shell' ? 0 : 2) + (r.legs[0]!.edge.kind === 'seam' ? 1 : 0);
  return runs.sort((a, b) => rank(a) - rank(b) || b.joins.length - a.joins.length);
}

/** The path of a leg as it lies, in the direction of the line. */
export const legPath = (leg: RunLeg): Path =>
  wayPath(leg.edge, leg.forward).map((p) => movePoint(p, leg.motion));
