import { pathIntersections, pathLineIntersections } from './cross.ts';
import { cubicCount } from './cubic.ts';
import { linePath, pathBetween, pathEnd, pathJoin, pathReflect, pathReverse, pathStart } from './path.ts';
import { placeTangent } from './place.ts';
import { CURVE_MM, SAME_MM } from './tolerance.ts';
import type { Path, PathPlace, Point } from './types.ts';
import { add, cross, distance, dot, perp, scale, sub, unit } from './vector.ts';

/**
 * How the allowance of a side ends at a corner.
 * mitre: both cutting lines run on until they meet; beyond `limit` widths from the corner (4 if not said) they are cut off square.
 * square: the neighbour's cutting line runs on to this side's stitching line drawn on; from there the end is square to this side's stitching line.
 * mirrored: likewise, but the end is the mirror image of the neighbour's cutting line across this side's stitching line, so that the
 * allowance, pressed open or turned up, lies on the piece with its end along the neighbour's edge.
 */
export type CornerStyle =
  | { readonly kind: 'mitre'; readonly limit?: number }
  | { readonly kind: 'square' }
  | { readonly kind: 'mirrored' };

/** What a corner became: as asked, or `cut` (a mitre beyond its limit), `step` (two widths on one line) or `bridge` (the sides are too short to meet). */
export type CornerResult = 'mitre' | 'square' | 'mirrored' | 'cut' | 'step' | 'bridge';

/** One end of a side as the corner sees it: its stitching line and the cutting line beside it. */
export interface CornerSide {
  readonly stitch: Path;
  readonly cut: Path;
  readonly width: number;
}

/** The two cutting lines as they leave the corner, `before` ending where `after` starts. */
export interface Corner {
  readonly before: Path;
  readonly after: Path;
  readonly result: CornerResult;
}

const MITRE_LIMIT = 4;
/** Below this turn (radians) two different widths meet in a step across the seam: the mitre would run far along it. */
const STEP_TURN = 0.35;
/** Widths nearer than this count as equal. */
const STEP_MM = 0.5;

const end = (path: Path): PathPlace => ({ cubic: cubicCount(path) - 1, t: 1 });
const START: PathPlace = { cubic: 0, t: 0 };
const endTangent = (path: Path): Point => placeTangent(path, end(path));

/** The path drawn on straight beyond its end. */
const drawnOn = (path: Path, by: number): Path =>
  pathJoin([path, linePath(pathEnd(path), add(pathEnd(path), scale(endTangent(path), by)))]);
const upTo = (path: Path, place: PathPlace): Path => pathBetween(path, START, place);
const from = (path: Path, place: PathPlace): Path => pathBetween(path, place, end(path));

function nearestMeeting(
  a: Path,
  b: Path,
  to: Point,
  reach: number,
): ReturnType<typeof pathIntersections>[number] | undefined {
  let best: ReturnType<typeof pathIntersections>[number] | undefined;
  for (const m of pathIntersections(a, b)) {
    const d = distance(m.point, to);
    if (d <= reach && (!best || d < distance(best.point, to))) best = m;
  }
  return best;
}

const join = (before: Path, bridge: readonly Point[], after: Path, result: CornerResult): Corner => {
  // The bridge belongs to the side before, so that the sides stay one closed chain.
  const parts: Path[] = [before];
  let at = pathEnd(before);
  for (const p of [...bridge, pathStart(after)]) {
    if (distance(at, p) > SAME_MM) parts.push(linePath(at, p));
    at = p;
  }
  return { before: pathJoin(parts), after, result };
};

/** A plain corner: the cutting lines trimmed or drawn on to their meeting. */
export function mitreCorner(a: CornerSide, b: CornerSide, limit = MITRE_LIMIT): Corner {
  const corner = pathEnd(a.stitch);
  const ta = endTangent(a.stitch);
  const tb = placeTangent(b.stitch, START);
  const turn = Math.atan2(cross(ta, tb), dot(ta, tb));
  // Sides that run on into one another: a meeting sought between near-parallels would wander along them.
  if (distance(pathEnd(a.cut), pathStart(b.cut)) <= CURVE_MM) {
    return join(a.cut, [], [pathEnd(a.cut), ...b.cut.slice(1)], 'mitre');
  }
  if (Math.abs(turn) < STEP_TURN && Math.abs(a.width - b.width) > STEP_MM)
    return join(a.cut, [], b.cut, 'step');
  const widest = Math.max(a.width, b.width);
  const reach = limit * widest;
  const longA = drawnOn(a.cut, 2 * reach);
  const longB = pathReverse(drawnOn(pathReverse(b.cut), 2 * reach));
  const meeting = nearestMeeting(longA, longB, corner, reach);
  if (meeting) return join(upTo(longA, meeting.a), [], from(longB, meeting.b), 'mitre');
  if (turn <= 0) return join(a.cut, [], b.cut, 'bridge');
  // Sharper than the limit: both run on to the limit's distance and are joined across.
  const on = (side: CornerSide): number => Math.sqrt(Math.max(0, reach * reach - side.width * side.width));
  const pa = add(pathEnd(a.cut), scale(ta, on(a)));
  const pb = add(pathStart(b.cut), scale(tb, -on(b)));
  return join(a.cut, [pa, pb], b.cut, 'cut');
}

/** The end of `a`'s allowance shaped against its neighbour `b`; undefined where the shape cannot be made within reach. */
export function shapedCorner(a: CornerSide, b: CornerSide, kind: 'square' | 'mirrored'): Corner | undefined {
  const corner = pathEnd(a.stitch);
  const ta = endTangent(a.stitch);
  const reach = MITRE_LIMIT * Math.max(a.width, b.width);
  const longB = pathReverse(drawnOn(pathReverse(b.cut), 2 * reach));
  const on = pathLineIntersections(longB, corner, add(corner, ta))
    .filter((m) => distance(m.point, corner) <= reach)
    .sort((m, n) => distance(m.point, corner) - distance(n.point, corner))[0];
  if (!on) return undefined;
  const after = from(longB, on.place);
  const longA = drawnOn(a.cut, 2 * reach);
  const ending =
    kind === 'mirrored'
      ? pathReflect(drawnOn(after, reach), corner, ta)
      : linePath(on.point, add(on.point, scale(outward(a, ta), 2 * a.width)));
  const meeting = nearestMeeting(longA, ending, on.point, reach);
  if (!meeting) return undefined;
  const back = pathReverse(upTo(ending, meeting.b));
  return { before: pathJoin([upTo(longA, meeting.a), back]), after, result: kind };
}

/** Which way from the stitching line the cutting line lies at its end (a corner seen from the other side is walked backwards). */
function outward(a: CornerSide, tangent: Point): Point {
  const left = perp(tangent);
  return dot(sub(pathEnd(a.cut), pathEnd(a.stitch)), left) >= 0 ? unit(left) : unit(scale(left, -1));
}
