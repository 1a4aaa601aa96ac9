import { cubicCount, cubicIsStraight, cubicOf, cubicVelocity } from './cubic.ts';
import { placeCurvature, placePoint, placeTangent } from './place.ts';
import { redrawPath } from './redraw.ts';
import type { Path, Point } from './types.ts';
import { length } from './vector.ts';

/** A quarter of what a curve may be off (CURVE_MM): the rest is left to whoever draws on. */
const PARALLEL_MM = 0.0125;

/**
 * The path `width` mm to the right of this one (outside, on a counter-clockwise outline; negative: to the left), within 0.0125 mm of the true parallel.
 * Derivative of the parallel: v·(1 + width·κ), κ positive to the left (do Carmo, Differential Geometry of Curves and Surfaces, 1.5 ex. 6).
 * Where the bend is tighter than the width the parallel runs backwards and crosses itself; `offsetOutline` cuts that loop off.
 * Joints of the path are taken to be smooth.
 */
export function pathParallel(path: Path, width: number): Path {
  if (width === 0) return path;
  const out: Point[] = [];
  const put = (part: Path): void => {
    for (let k = out.length === 0 ? 0 : 1; k < part.length; k++) out.push(part[k]!);
  };
  const beside = (part: Path, cubic: number, t: number): Point => {
    const p = placePoint(part, { cubic, t });
    const d = placeTangent(part, { cubic, t });
    return { x: p.x + d.y * width, y: p.y - d.x * width };
  };
  for (let i = 0; i < cubicCount(path); i++) {
    const cubic = cubicOf(path, i);
    if (cubicIsStraight(cubic)) {
      const d = placeTangent(cubic, { cubic: 0, t: 0 });
      put(cubic.map((p) => ({ x: p.x + d.y * width, y: p.y - d.x * width })));
      continue;
    }
    const { path: drawn } = redrawPath(
      cubic,
      (_, t, _later, out) => {
        const v = cubicVelocity(cubic, t);
        const bend = length(v) > 0 ? 1 + width * placeCurvature(cubic, { cubic: 0, t }) : 0;
        const p = beside(cubic, 0, t);
        out.x = p.x;
        out.y = p.y;
        out.vx = v.x * bend;
        out.vy = v.y * bend;
      },
      [],
      PARALLEL_MM,
    );
    put(drawn);
  }
  return out;
}
