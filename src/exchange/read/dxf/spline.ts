import { cubicCount, placePoint, throughPoints } from '../../../geometry/index.ts';
import type { Point } from '../../../geometry/index.ts';

/** Points taken on each span between two knots: on a span of 200 mm a chord is then off by less than a hundredth of a millimetre. */
const PER_SPAN = 48;
const MOST_DEGREE = 10;

/**
 * Points along a spline of the open DXF reference: degree, knots, control points, and weights where it is rational.
 * Null where these do not go together.
 */
export function splinePoints(
  degree: number,
  knots: readonly number[],
  controls: readonly Point[],
  weights: readonly number[],
): Point[] | null {
  const n = controls.length;
  if (!Number.isInteger(degree) || degree < 1 || degree > MOST_DEGREE || n <= degree) return null;
  if (knots.length !== n + degree + 1 || knots.some((knot, i) => i > 0 && knot < knots[i - 1]!)) return null;
  const points: Point[] = [];
  for (let span = degree; span < n; span++) {
    const [from, to] = [knots[span]!, knots[span + 1]!];
    if (!(to > from)) continue;
    const steps = degree === 1 ? 1 : PER_SPAN;
    for (let k = points.length === 0 ? 0 : 1; k <= steps; k++)
      points.push(deBoor(degree, knots, controls, weights, span, from + ((to - from) * k) / steps));
  }
  return points.length > 1 ? points : null;
}

/**
 * Points along a spline of which only the points it passes through are said: the smoothest line through them. Without tangents its ends lean as the
 * parabola through the three points there does. Null for fewer than two.
 */
export function splineThrough(
  given: readonly Point[],
  tangents: readonly [Point, Point] | null,
): Point[] | null {
  const points = given.filter((p, i) => i === 0 || p.x !== given[i - 1]!.x || p.y !== given[i - 1]!.y);
  if (points.length < 3) return points.length === 2 ? points : null;
  const lean = (p: Point, q: Point, r: Point): Point => ({
    x: 3 * (q.x - p.x) - (r.x - q.x),
    y: 3 * (q.y - p.y) - (r.y - q.y),
  });
  const [r, q, p] = points.slice(-3) as [Point, Point, Point];
  const back = lean(p, q, r);
  const [start, end] = tangents ?? [lean(points[0]!, points[1]!, points[2]!), { x: -back.x, y: -back.y }];
  const none = ({ x, y }: Point) => x === 0 && y === 0;
  const path = throughPoints(points, {
    ...(none(start) ? {} : { startTangent: start }),
    ...(none(end) ? {} : { endTangent: end }),
  });
  return [
    points[0]!,
    ...Array.from({ length: cubicCount(path) * PER_SPAN }, (_, i) =>
      placePoint(path, { cubic: Math.floor(i / PER_SPAN), t: ((i % PER_SPAN) + 1) / PER_SPAN }),
    ),
  ];
}

function deBoor(
  degree: number,
  knots: readonly number[],
  controls: readonly Point[],
  weights: readonly number[],
  span: number,
  at: number,
): Point {
  const d = Array.from({ length: degree + 1 }, (_, j) => {
    const i = span - degree + j;
    const w = weights[i] ?? 1;
    return { x: controls[i]!.x * w, y: controls[i]!.y * w, w };
  });
  for (let r = 1; r <= degree; r++) {
    for (let j = degree; j >= r; j--) {
      const low = knots[span - degree + j]!;
      const share = (at - low) / (knots[span + 1 + j - r]! - low);
      const [p, q] = [d[j - 1]!, d[j]!];
      d[j] = {
        x: p.x + share * (q.x - p.x),
        y: p.y + share * (q.y - p.y),
        w: p.w + share * (q.w - p.w),
      };
    }
  }
  const { x, y, w } = d[degree]!;
  return { x: x / w, y: y / w };
}
