import { turn } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { bend, heading } from './curve.ts';

/** From the point across the back or chest, upright there, to the shoulder tip, which it meets square to the shoulder. `slope` in degrees; the tip lies outside of the width across. */
export function upperArmhole(across: Point, tip: Point, slope: number): Path {
  const rise = tip.y - across.y;
  // A handle that reached past where the two tangents meet would bow the line out before the tip.
  const meet = (tip.x - across.x) / Math.sin((slope * Math.PI) / 180);
  return bend(across, heading(90), 0.42 * rise, tip, heading(90 - slope), Math.min(0.36 * rise, 0.85 * meet));
}

/**
 * From the underarm, level there, up to the point across the back or chest. `swing` is the angle (radians, clockwise) by which that end is
 * swung away where a dart lies in the armhole. `scoop`: handle shares, upright and level; larger ones scoop deeper.
 */
export function lowerArmhole(
  underarm: Point,
  across: Point,
  swing: number,
  scoop: readonly [number, number],
): Path {
  const [upright, level] = scoop;
  return bend(
    underarm,
    heading(180),
    level * (underarm.x - across.x),
    across,
    turn(heading(90), -swing),
    upright * (across.y - underarm.y),
  );
}
