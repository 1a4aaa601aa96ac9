import { pathJoin, pathLength } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { heading, round } from './curve.ts';
import { solve } from './solve.ts';

/** How one half of a cap runs from the underarm to the crown. Shares of the half's width and of the cap's height. */
export interface CapShape {
  /** Where the hollow turns into the crown. */
  readonly turnAt: { readonly along: number; readonly up: number };
  /** How much steeper than the straight line from underarm to crown it is there (factor on the angle). */
  readonly steeper: number;
  /** How full the hollow is, as in `round`. */
  readonly hollow: number;
  /** How full the crown is. */
  readonly crown: number;
}

/** Of a fitted sleeve: the front hollow is deeper than the back's, the back crown fuller. */
export const FITTED_FRONT: CapShape = {
  turnAt: { along: 0.45, up: 0.35 },
  steeper: 1.5,
  hollow: 0.6,
  crown: 0.76,
};
export const FITTED_BACK: CapShape = {
  turnAt: { along: 0.4, up: 0.37 },
  steeper: 1.42,
  hollow: 0.54,
  crown: 0.76,
};
/** Of a knit sleeve: shallow hollows, the two halves nearly alike. */
export const KNIT_FRONT: CapShape = {
  turnAt: { along: 0.44, up: 0.36 },
  steeper: 1.4,
  hollow: 0.7,
  crown: 0.7,
};
export const KNIT_BACK: CapShape = {
  turnAt: { along: 0.42, up: 0.37 },
  steeper: 1.38,
  hollow: 0.68,
  crown: 0.7,
};

/** Of a smock or shirt sleeve: both halves alike and shallow. */
export const FLAT: CapShape = {
  turnAt: { along: 0.42, up: 0.4 },
  steeper: 1.36,
  hollow: 0.66,
  crown: 0.72,
};

/** No cap leans outwards over its arm, degrees. */
const STEEPEST = 86;

/** Half a cap from the underarm at (0, 0) to a crown at (width, height): level at both ends. */
function half(shape: CapShape, width: number, height: number): Path {
  const mid: Point = { x: shape.turnAt.along * width, y: shape.turnAt.up * height };
  const way = heading(Math.min(STEEPEST, (shape.steeper * Math.atan2(height, width) * 180) / Math.PI));
  return pathJoin([
    round({ x: 0, y: 0 }, heading(0), mid, way, shape.hollow),
    round(mid, way, { x: width, y: height }, heading(0), shape.crown),
  ]);
}

export interface Cap {
  readonly height: number;
  /** Widths of the two halves at the underarm, front then back, either side of the crown at x = 0. */
  readonly frontWidth: number;
  readonly backWidth: number;
  /** From the crown down to the front underarm. */
  readonly front: Path;
  /** From the back underarm up to the crown. */
  readonly back: Path;
}

/**
 * The cap whose halves have exactly the wanted seam lengths (armhole + ease) on a sleeve of the wanted width:
 * its height and the place of its crown are solved for.
 * Throws RangeError where no cap of that width is so long.
 */
export function sleeveCap(wanted: {
  readonly width: number;
  readonly frontLength: number;
  readonly backLength: number;
  readonly frontShape: CapShape;
  readonly backShape: CapShape;
}): Cap {
  const { width, frontLength, backLength, frontShape, backShape } = wanted;
  const widthFor = (shape: CapShape, length: number, height: number): number =>
    solve((w) => pathLength(half(shape, w, height)) - length, 0.05 * width, width);
  const height = solve(
    (h) => widthFor(frontShape, frontLength, h) + widthFor(backShape, backLength, h) - width,
    0.1 * width,
    0.75 * Math.min(frontLength, backLength),
  );
  const frontWidth = widthFor(frontShape, frontLength, height);
  const backWidth = width - frontWidth;
  const front = half(frontShape, frontWidth, height)
    .map((p) => ({ x: p.x - frontWidth, y: p.y }))
    .toReversed();
  const back = half(backShape, backWidth, height).map((p) => ({ x: backWidth - p.x, y: p.y }));
  return { height, frontWidth, backWidth, front, back };
}
