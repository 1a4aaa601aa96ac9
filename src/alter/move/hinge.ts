import {
  angleBetween,
  distance,
  nearestPlace,
  pathFlatten,
  pathLineIntersections,
  pathStart,
  ringContains,
  sub,
  turnAbout,
} from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { mixRun, turnRun } from './bridge.ts';
import { carry, ON_EDGE_MM } from './carry.ts';
import type { Carriage } from './carry.ts';

/** A level crossing nearer to the slash than this does not hold the redrawn run. Same reason as in slide.ts. */
const HOLD_MM = 20;
/** The outline may have been redrawn at the mouth since it was stated: it is looked for within this share of the slash. */
const MOUTH_SHARE = 0.2;
/** Flattening of the turned part's outline for asking whether a mark lies in it. */
const RING_MM = 0.5;

/**
 * A slash from the `mouth` on the outline to the `hinge`, and on to `other`, where the moving part ends: the seamline straight behind the hinge when absent.
 * The moving part lies counter-clockwise of the mouth as seen from the hinge. Positive `angle` (radians) opens at the mouth and closes at `other`.
 */
export interface Hinge {
  readonly hinge: Point;
  readonly mouth: Point;
  readonly other?: Point;
  readonly angle: number;
  /** The other part turns instead, clockwise of the mouth (only with a hinge on the outline): so that a centre fold can stay. */
  readonly before?: boolean;
  /** Which edges turn, where corners share a point (a slit) and geometry cannot say; see `Carriage`. */
  readonly edgePart?: (index: number) => number | undefined;
}

/** The angle (radians) that opens a slash of length `radius` by `opening`, measured straight across. Source: chord of a circle. */
export const openingAngle = (opening: number, radius: number): number =>
  2 * Math.asin(Math.max(-1, Math.min(1, opening / (2 * radius))));

/** How far a slash of length `radius` opens when its part turns by `angle` radians. */
export const openingAt = (angle: number, radius: number): number => 2 * radius * Math.sin(angle / 2);

/** Angle of `p` counter-clockwise from the mouth, 0..2π. */
const around = (hinge: Point, mouth: Point, p: Point): number => {
  const a = angleBetween(sub(mouth, hinge), sub(p, hinge));
  return a < 0 ? a + 2 * Math.PI : a;
};

const turnedBy = (slash: Hinge): Parts => (slash.edgePart ? { edgePart: slash.edgePart } : {});

/** The edge a point lies on; undefined when it lies on none. */
function onOutline(piece: DrawnPiece, p: Point): number | undefined {
  const index = piece.edges.findIndex((edge) => nearestPlace(edge.path, p).distance < ON_EDGE_MM);
  return index < 0 ? undefined : index;
}

/** The edge that the slash opens on: where its line meets the outline nearest to the stated mouth. */
function mouthEdge(piece: DrawnPiece, hinge: Point, mouth: Point): number | undefined {
  let best: number | undefined;
  let off = MOUTH_SHARE;
  for (const [index, edge] of piece.edges.entries()) {
    for (const hit of pathLineIntersections(edge.path, hinge, mouth)) {
      if (Math.abs(hit.along - 1) < off) [best, off] = [index, Math.abs(hit.along - 1)];
    }
  }
  return best;
}

type Parts = Pick<Carriage, 'cornerPart' | 'edgePart' | 'insidePart'>;

/**
 * Which edges turn when both mouth and hinge lie on the outline: those walked counter-clockwise from the mouth to the hinge. Said by the outline and not by the side of a
 * line, because the line behind a hinge on an armhole may meet the piece again under the arm.
 */
function walkedParts(piece: DrawnPiece, mouth: Point, hinge: Point, before: boolean): Parts {
  const m = mouthEdge(piece, hinge, mouth);
  const h = onOutline(piece, hinge);
  if (m === undefined || h === undefined || m === h) return {};
  const n = piece.edges.length;
  const [first, last] = before ? [h, m] : [m, h];
  const turns = new Set<number>();
  for (let i = (first + 1) % n; i !== last; i = (i + 1) % n) turns.add(i);
  const [from, to] = before ? [hinge, mouth] : [mouth, hinge];
  const ring = [
    from,
    ...[...turns].flatMap((i) => pathFlatten(piece.edges[i]!.path, RING_MM)),
    pathStart(piece.edges[last]!.path),
    to,
  ];
  return {
    insidePart: (p) => (ringContains(ring, p) ? 1 : 0),
    // A corner turns when the edge it starts is walked, or when it starts the last edge of the walk.
    cornerPart: (i) => (turns.has(i) || i === last ? 1 : 0),
    edgePart: (i) => (turns.has(i) ? 1 : i === m || i === h ? undefined : 0),
  };
}

/**
 * The slashed part turned about the hinge; the gap at the mouth filled, or the overlap removed, by redrawing the edge that the mouth lies on
 * between its nearest corners or level crossings. A hinge on the seamline keeps that seam's length. The opposite angle undoes it exactly.
 */
export function hingePart(piece: DrawnPiece, slash: Hinge): DrawnPiece {
  const { hinge, mouth } = slash;
  if (slash.angle === 0) return piece;
  const before = slash.before ?? false;
  const angle = before ? -slash.angle : slash.angle;
  const sector = slash.other ? around(hinge, mouth, slash.other) : Math.PI;
  const partOf = (p: Point): number => {
    const a = around(hinge, mouth, p);
    const inside = before ? a > 2 * Math.PI - sector + 1e-9 : a > 1e-9 && a < sector - 1e-9;
    return inside && distance(p, hinge) > 1e-7 ? 1 : 0;
  };
  const motion = turnAbout(hinge, angle);
  const walked: Parts =
    slash.edgePart || slash.other ? turnedBy(slash) : walkedParts(piece, mouth, hinge, before);
  return carry(piece, {
    partOf,
    ...walked,
    motions: [undefined, motion],
    hinges: [hinge],
    holds: (p) => {
      const r = distance(p, hinge);
      const a = angleBetween(sub(mouth, hinge), sub(p, hinge));
      const turns = a > 0 !== before;
      return r * (Math.abs(a) + (turns ? Math.min(0, slash.angle) : 0)) >= HOLD_MM;
    },
    bridge: (run, a, b) => {
      const inside = nearestPlace(run, hinge).distance < 1;
      return inside
        ? mixRun(run, a === 1 ? motion : undefined, b === 1 ? motion : undefined)
        : turnRun(run, hinge, angle, a === 0);
    },
  });
}
