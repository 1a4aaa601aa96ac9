import { linePath } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { heading, round } from './curve.ts';

/** The point `mm` along a shoulder that falls by `slope` degrees from the side of the neck. */
export function shoulderTip(neckSide: Point, slope: number, mm: number): Point {
  const way = heading(-slope);
  return { x: neckSide.x + mm * way.x, y: neckSide.y + mm * way.y };
}

/** The shoulder seam from tip to neck. */
export const shoulderLine = (tip: Point, neckSide: Point): Path => linePath(tip, neckSide);

/** The neckline from the side of the neck, square to the shoulder there, to the centre, square to it. `full`: as in `round`. */
export const neckline = (
  neckSide: Point,
  slope: number,
  centre: Point,
  full: readonly [number, number],
): Path => round(neckSide, heading(-90 - slope), centre, heading(180), full);

/** Of a front neck, nearly straight down from the shoulder and flat at the centre. */
export const FRONT_NECK = [0.5, 0.95] as const;
/** Of a back neck. */
export const BACK_NECK = [0.62, 0.68] as const;
