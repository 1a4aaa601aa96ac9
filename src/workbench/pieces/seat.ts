import { edgeAt } from '../../garment/index.ts';
import type { DrawnPiece, EdgeRef, Garment, Seam } from '../../garment/index.ts';
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

/** One edge of a chain as walked: in walking direction, with how far along the chain it begins. */
export interface Leg {
  readonly piece: DrawnPiece;
  readonly edge: string;
  readonly path: Path;
  readonly from: number;
  readonly length: number;
  /** The piece lies to the left of the walk (its edges run counter-clockwise, so: walked forwards). */
  readonly left: boolean;
  readonly notches: readonly { readonly id: string; readonly at: number; readonly count: number }[];
}

/** A chain of edges made ready for walking; edges that the garment lacks are left out (a finding says so elsewhere). */
export function chainOf(garment: Garment, refs: readonly EdgeRef[]): readonly Leg[] {
  const legs: Leg[] = [];
  let from = 0;
  for (const ref of refs) {
    const found = edgeAt(garment, ref);
    if (!found) continue;
    const { piece, edge } = found;
    const path = ref.backwards ? pathReverse(edge.path) : edge.path;
    const length = pathLength(path);
    const notches = edge.notches.map((n) => ({
      id: n.id,
      count: n.count,
      at: from + (ref.backwards ? 1 - n.at : n.at) * length,
    }));
    legs.push({ piece, edge: ref.edge, path, from, length, left: !ref.backwards, notches });
    from += length;
  }
  return legs;
}

/** Length of a chain made ready, mm. */
export const legsLength = (legs: readonly Leg[]): number =>
  (legs.at(-1)?.from ?? 0) + (legs.at(-1)?.length ?? 0);

/** The leg under a walked length, and point and direction there in the piece's own coordinates. */
export function alongChain(legs: readonly Leg[], walked: number): { leg: Leg; at: Point; way: Point } {
  const leg = legs.findLast((l) => l.from <= walked + 1e-9) ?? legs[0]!;
  const place = placeAtLength(leg.path, Math.min(leg.length, Math.max(0, walked - leg.from)));
  return { leg, at: placePoint(leg.path, place), way: placeTangent(leg.path, place) };
}

/** The rigid motion that takes a point with a direction onto another; `mirror` flips x first. */
export function seatOn(at: Point, way: Point, onto: Point, ontoWay: Point, mirror: boolean): Motion {
  const [p, w] = mirror
    ? [
        { x: -at.x, y: at.y },
        { x: -way.x, y: way.y },
      ]
    : [at, way];
  const angle = Math.atan2(w.x * ontoWay.y - w.y * ontoWay.x, w.x * ontoWay.x + w.y * ontoWay.y);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return {
    angle,
    dx: onto.x - (p.x * c - p.y * s),
    dy: onto.y - (p.x * s + p.y * c),
    ...(mirror ? { mirror: true } : {}),
  };
}

/** Moves a direction: the turn of a motion without its shift. */
export function moveWay(way: Point, motion: Motion): Point {
  return movePoint(way, { ...motion, dx: 0, dy: 0 });
}

/**
 * Chain `a` laid out at rest: its first piece as drawn, each next one seated so that the walk runs on without a bend.
 * Gives one motion per leg.
 */
function layChain(legs: readonly Leg[]): readonly Motion[] {
  const motions: Motion[] = [];
  for (const [i, leg] of legs.entries()) {
    if (i === 0) {
      motions.push({ angle: 0, dx: 0, dy: 0 });
      continue;
    }
    const before = legs[i - 1]!;
    const end = placeAtLength(before.path, before.length);
    const start = placeAtLength(leg.path, 0);
    const last = motions[i - 1]!;
    const onto = movePoint(placePoint(before.path, end), last);
    const ontoWay = moveWay(placeTangent(before.path, end), last);
    // Legs of one chain lie on the same side of the walk; one drawn the other way round is turned over.
    const turned = leg.left !== (last.mirror ? !before.left : before.left);
    motions.push(seatOn(placePoint(leg.path, start), placeTangent(leg.path, start), onto, ontoWay, turned));
  }
  return motions;
}

export interface Seated {
  readonly piece: DrawnPiece;
  readonly motion: Motion;
}

/**
 * The two sides of a seam with `walked` mm of it pinned: side `a` at rest, the piece of side `b` that is at the pin rolled onto it, on the other side of the line.
 * Where one side is longer (ease, gathers) both are walked by shares, so that their ends meet.
 */
export function seatSeam(
  garment: Garment,
  seam: Seam,
  share: number,
  even: boolean,
): { a: readonly Seated[]; b: Seated; at: Point; walkedA: number; walkedB: number } | null {
  const a = chainOf(garment, seam.a);
  const b = chainOf(garment, seam.b);
  if (a.length === 0 || b.length === 0) return null;
  const [la, lb] = [legsLength(a), legsLength(b)];
  const walkedA = even ? share * la : Math.min(la, share * Math.max(la, lb));
  const walkedB = even ? share * lb : Math.min(lb, share * Math.max(la, lb));
  const rest = layChain(a);
  const onA = alongChain(a, walkedA);
  const motionA = rest[a.indexOf(onA.leg)]!;
  const at = movePoint(onA.at, motionA);
  const way = moveWay(onA.way, motionA);
  const onB = alongChain(b, walkedB);
  const aLeft = motionA.mirror ? !onA.leg.left : onA.leg.left;
  const motionB = seatOn(onB.at, onB.way, at, way, onB.leg.left === aLeft);
  return {
    a: a.map((leg, i) => ({ piece: leg.piece, motion: rest[i]! })),
    b: { piece: onB.leg.piece, motion: motionB },
    at,
    walkedA,
    walkedB,
  };
}

/** A motion as an SVG transform in y-down drawing of y-up coordinates is left to the caller; this is the y-up matrix. */
export function motionMatrix({ angle, dx, dy, mirror }: Motion): string {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const m = mirror ? -1 : 1;
  return `matrix(${c * m} ${s * m} ${-s} ${c} ${dx} ${dy})`;
}
