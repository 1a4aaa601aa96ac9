import { angleBetween, distance, sub, turnAbout } from '../geometry/index.ts';
import type { Point } from '../geometry/index.ts';
import type { DrawnPiece } from '../garment/index.ts';
import { mixRun, turnRun } from './bridge.ts';
import { carry } from './carry.ts';

/** A level crossing nearer to the slash than this does not hold the redrawn run. Same reason as in slide.ts. */
const HOLD_MM = 20;

/**
 * A slash from the `mouth` on the outline to the `hinge`, and on to `other`, where the moving part ends: the seamline straight behind the hinge when absent.
 * The moving part lies counter-clockwise of the mouth as seen from the hinge. Positive `angle` (radians) opens at the mouth and closes at `other`.
 */
export interface Hinge {
  readonly hinge: Point;
  readonly mouth: Point;
  readonly other?: Point;
  readonly angle: number;
  /** Overrides for corners that share a point, by the number of the edge they start; see `Carriage.cornerPart`. */
  readonly cornerPart?: (index: number) => number | undefined;
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

/**
 * The slashed part turned about the hinge; the gap at the mouth filled, or the overlap removed, by redrawing the edge that the mouth lies on
 * between its nearest corners or level crossings. A hinge on the seamline keeps that seam's length. The opposite angle undoes it exactly.
 */
export function hingePart(piece: DrawnPiece, slash: Hinge): DrawnPiece {
  const { hinge, mouth, angle } = slash;
  if (angle === 0) return piece;
  const sector = slash.other ? around(hinge, mouth, slash.other) : Math.PI;
  const partOf = (p: Point): number => {
    const a = around(hinge, mouth, p);
    return a > 1e-9 && a < sector - 1e-9 && distance(p, hinge) > 1e-7 ? 1 : 0;
  };
  const motion = turnAbout(hinge, angle);
  return carry(piece, {
    partOf,
    ...(slash.cornerPart ? { cornerPart: slash.cornerPart } : {}),
    motions: [undefined, motion],
    hinges: [hinge],
    holds: (p) => {
      const r = distance(p, hinge);
      const a = angleBetween(sub(mouth, hinge), sub(p, hinge));
      return a > 0 ? r * (a + Math.min(0, angle)) >= HOLD_MM : -r * a >= HOLD_MM;
    },
    bridge: (run, a, b) => {
      const inside = run.some((p) => distance(p, hinge) < 1);
      return inside
        ? mixRun(run, a === 1 ? motion : undefined, b === 1 ? motion : undefined)
        : turnRun(run, hinge, angle, a === 0);
    },
  });
}
