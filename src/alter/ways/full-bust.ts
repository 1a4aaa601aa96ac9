import { angleBetween, distance, linePath, pathAt, sub, turnAbout } from '../../geometry/index.ts';
import type { Motion, Point } from '../../geometry/index.ts';
import { edgesOf, hasRole } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { mixRun } from '../move/bridge.ts';
import { carry } from '../move/carry.ts';
import { dartOf } from '../dart/dart.ts';
import type { Edit } from '../follow/change.ts';
import { notchShare } from '../role/height.ts';
import { pullEdges } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';

/** A dart whose point lies this near to the bust point is a bust dart: its point goes with the bust point (trade.md 5.10: darts stop up to 2 in short). */
const OF_BUST_MM = 75;

/** The geometry of one bust alteration: everything measured from the bust point. */
export interface BustSlash {
  readonly bust: Point;
  /** On the armhole seamline. */
  readonly hinge: Point;
  /** Where the slash to the side lies; undefined when the whole side section turns as one (no side dart). */
  readonly side?: Point;
  /** How far the side section stands off at the bust point; negative overlaps. */
  readonly width: number;
}

/**
 * The turn about the armhole hinge that moves the side section's bust point `width` mm sideways, and how far that point comes down: the front must get that much longer.
 * Source: trade.md 5.10, the table of turns (derived). Refusal when the slash is too short for it.
 */
export function bustTurn({ bust, hinge, width }: BustSlash): { angle: number; drop: number } {
  const r = sub(bust, hinge);
  const radius = distance(bust, hinge);
  const from = Math.atan2(r.y, r.x);
  const cos = (r.x + width) / radius;
  if (Math.abs(cos) > 1) {
    throw new Refusal('slash-too-short', { width });
  }
  // Of the two directions with that cosine the one next to the old: below the hinge.
  const angle = -Math.acos(cos) - from;
  const drop = -(radius * Math.sin(from + angle) - r.y);
  return { angle, drop };
}

/** The bust point of a front, or the point its bust dart aims at; Refusal `no-bust-point`. */
export function bustPoint(piece: DrawnPiece): Point {
  const mark = piece.marks.find((m) => m.kind === 'bust-point');
  if (mark) return mark.at;
  const dart = piece.darts.find((d) => d.serves === 'bust');
  if (dart) return dartOf(piece, dart.id).point;
  throw new Refusal('no-bust-point', { piece: piece.name }, { piece: piece.id });
}

/** The hinge on the armhole: its front notch, else two fifths up from the underarm (trade.md 5.10: about the notch). */
export function armholeHinge(piece: DrawnPiece): Point {
  const armhole = edgesOf(piece, 'armhole')[0];
  if (!armhole)
    throw new Refusal('no-armhole', { role: 'armhole', on: { piece: piece.name } }, { piece: piece.id });
  const notch = notchShare(armhole, 1) ?? notchShare(armhole, 2);
  return pathAt(armhole.path, notch ?? 0.4);
}

/** Bust darts of a piece: those that point at the bust point. */
export const bustDarts = (piece: DrawnPiece, bust: Point): string[] =>
  piece.darts.filter((d) => distance(dartOf(piece, d.id).point, bust) < OF_BUST_MM).map((d) => d.id);

/** The dart that opens in the side seam, if any. */
export function sideDart(piece: DrawnPiece, bust: Point): string | undefined {
  return bustDarts(piece, bust).find((id) => {
    const { first } = dartOf(piece, id);
    const n = piece.edges.length;
    const before = piece.edges[(first + n - 1) % n]!;
    return hasRole(before, 'side');
  });
}

/** Parts of the slashed front. */
const UPPER_CENTRE = 0;
const UPPER_SIDE = 1;
const LOWER_SIDE = 2;
const LOWER_CENTRE = 3;

/**
 * Slashes a dart front for a fuller (or smaller) bust: up from the waist to the bust point, on to the armhole hinge, in from the side dart, and level to the centre.
 * The side section turns about the hinge; what lies below the side dart follows without turning, so that the upright cut opens parallel; the lower centre comes down
 * until both are level. Armhole and closed side seam keep their length. Darts' points go with the bust point, to the middle of the gap.
 */
export function slashBust(slash: BustSlash): Edit {
  const { bust, hinge, side, width } = slash;
  const { angle, drop } = bustTurn(slash);
  const turned = turnAbout(hinge, angle);
  const motions: (Motion | undefined)[] = [
    undefined,
    turned,
    { angle: 0, dx: width, dy: -drop },
    { angle: 0, dx: 0, dy: -drop },
  ];
  const from = (p: Point): number => {
    // Counter-clockwise from straight down.
    const a = angleBetween({ x: 0, y: -1 }, sub(p, bust));
    return a < 0 ? a + 2 * Math.PI : a;
  };
  const toSide = side ? from(side) : 0;
  const toHinge = from(hinge);
  const toCentre = 1.5 * Math.PI;
  const partOf = (p: Point): number => {
    const a = from(p);
    if (a < toSide - 1e-9) return LOWER_SIDE;
    if (a < toHinge - 1e-9) return UPPER_SIDE;
    return a < toCentre + 1e-9 ? UPPER_CENTRE : LOWER_CENTRE;
  };
  return (piece) => {
    // The two mouths of the side dart may share a point (a slit just cut): told apart by the legs, not by where they are.
    const dart = side && piece.darts.find((d) => nearestTo(piece, d.id, side) < 40);
    const legs = dart && dartOf(piece, dart.id);
    const done = carry(piece, {
      partOf,
      cornerPart: (i) =>
        legs && i === legs.first
          ? LOWER_SIDE
          : legs && i === (legs.second + 1) % piece.edges.length
            ? UPPER_SIDE
            : undefined,
      motions,
      hinges: [hinge],
      holds: (p) => distance(p, bust) > 20 && Math.abs(p.y - bust.y) > 20,
      bridge: (run, a, b) => mixRun(run, motions[a], motions[b]),
    });
    // A side dart that turned with its whole section aims where it did; the others follow the bust point.
    const whole = side ? undefined : sideDart(piece, bust);
    const aims = bustDarts(piece, bust).filter((id) => id !== whole);
    return aimed(piece, done, aims, { x: width / 2, y: -drop / 2 });
  };
}

const nearestTo = (piece: DrawnPiece, dart: string, p: Point): number => {
  const d = dartOf(piece, dart);
  return Math.min(distance(d.a, p), distance(d.b, p));
};

/** Bust darts and bust point re-aimed: each point where it was, moved as the middle of the gap moved. */
function aimed(before: DrawnPiece, after: DrawnPiece, darts: readonly string[], by: Point): DrawnPiece {
  let piece: DrawnPiece = {
    ...after,
    marks: after.marks.map((m) => {
      const old = before.marks.find((x) => x.id === m.id);
      return m.kind === 'bust-point' && old ? { ...m, at: { x: old.at.x + by.x, y: old.at.y + by.y } } : m;
    }),
  };
  for (const id of darts) {
    const old = dartOf(before, id);
    const now = dartOf(piece, id);
    const want = { x: old.point.x + by.x, y: old.point.y + by.y };
    piece = ruledLegs(pullEdges(piece, [{ edge: now.dart.legs[1], at: 0, by: sub(want, now.point) }]), id);
  }
  return piece;
}

/** A dart's legs ruled straight from mouth to point again, as they are sewn. */
function ruledLegs(piece: DrawnPiece, id: string): DrawnPiece {
  const { dart, a, point, b } = dartOf(piece, id);
  return {
    ...piece,
    edges: piece.edges.map((edge) => {
      if (edge.id === dart.legs[0]) return { ...edge, path: linePath(a, point) };
      return edge.id === dart.legs[1] ? { ...edge, path: linePath(point, b) } : edge;
    }),
  };
}
