import {
  add,
  distance,
  dot,
  linePath,
  pathBetween,
  pathEnd,
  pathJoin,
  pathLineIntersections,
  pathReflect,
  pathReverse,
  pathStart,
  placeTangent,
  scale,
  sub,
  unit,
  cubicCount,
} from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';

/**
 * The stitching line across the mouth of a dart as it must lie flat, so that with the dart folded and pressed the cloth inside it ends
 * along the edge it is pressed to: that edge mirrored across its own leg up to the dart's middle, then turned about the dart's point to the other leg.
 * `before` ends at the first leg's mouth, `after` starts at the second leg's; the mouth is open. Undefined where the edge, drawn on, never reaches the middle.
 */
export function dartCap(
  before: Path,
  first: Path,
  second: Path,
  after: Path,
  foldToward: 'first' | 'second',
): Path | undefined {
  const point = pathEnd(first);
  const mouth1 = pathStart(first);
  const mouth2 = pathEnd(second);
  if (foldToward === 'first') return cap(before, point, mouth1, mouth2);
  const other = cap(pathReverse(after), point, mouth2, mouth1);
  return other && pathReverse(other);
}

/** `edge` ends at `mouth`; the cap runs from `mouth` to `far`. */
function cap(edge: Path, point: Point, mouth: Point, far: Point): Path | undefined {
  const leg = sub(mouth, point);
  const middle = add(point, add(unit(leg), unit(sub(far, point))));
  const away = placeTangent(edge, { cubic: cubicCount(edge) - 1, t: 1 });
  const reach = distance(mouth, far) * 4;
  // The edge from the mouth away from the dart, drawn on in case it is shorter than half the mouth.
  const back = pathReverse(edge);
  const tail = add(pathEnd(back), scale(placeTangent(back, { cubic: cubicCount(back) - 1, t: 1 }), reach));
  const long = away.x === 0 && away.y === 0 ? back : pathJoin([back, linePath(pathEnd(back), tail)]);
  const mirrored = pathReflect(long, point, leg);
  const meet = pathLineIntersections(mirrored, point, middle).find((m) => m.along > 0);
  if (!meet || distance(meet.point, mouth) > reach) return undefined;
  const near = pathBetween(mirrored, { cubic: 0, t: 0 }, meet.place);
  // The other half is the edge itself turned about the dart's point: the mirrored half mirrored again across the middle.
  const turned = pathReverse(pathReflect(near, point, sub(middle, point)));
  return pathJoin([near, endingAt(turned, far)]);
}

/** The path sheared so that it ends at `far`: the legs of a dart differ by a rounding or, untrued, by more, and the cap must meet both. */
function endingAt(path: Path, far: Point): Path {
  const start = pathStart(path);
  const chord = sub(pathEnd(path), start);
  const miss = sub(far, pathEnd(path));
  const whole = dot(chord, chord);
  if (whole === 0) return path;
  return path.map((p, i) =>
    i === path.length - 1 ? far : add(p, scale(miss, dot(sub(p, start), chord) / whole)),
  );
}
