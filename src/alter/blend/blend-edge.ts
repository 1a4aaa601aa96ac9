import type { Edge } from '../../garment/index.ts';
import {
  CURVE_MM,
  cubicCount,
  lengthAtPlace,
  lengthRuler,
  lerp,
  linePath,
  monotone,
  newMoving,
  norm,
  pathIsStraight,
  placeAtLength,
  placeAtShare,
  redrawPath,
  shareAtPlace,
  writePlace,
} from '../../geometry/index.ts';
import type { Moving, Path, PathPlace, Point } from '../../geometry/index.ts';

/** The two printed sizes a fractional one lies between, and how far from the first to the second. Beyond the nest the last step goes on. */
function between(size: number, count: number): { low: number; high: number; share: number } {
  if (count === 1) return { low: 0, high: 0, share: 0 };
  const low = Math.min(count - 2, Math.max(0, Math.floor(size)));
  return { low, high: low + 1, share: size - low };
}

/** A number printed per size, at a fractional size. */
function numberAtSize(nest: readonly number[], size: number): number {
  const { low, high, share } = between(size, nest.length);
  return nest[low]! + (nest[high]! - nest[low]!) * share;
}

/** A point printed per size, at a fractional size. */
export function pointAtSize(nest: readonly Point[], size: number): Point {
  const { low, high, share } = between(size, nest.length);
  return share === 0 ? nest[low]! : lerp(nest[low]!, nest[high]!, share);
}

/** A path at a fractional size, point by point. A printed size gives the printed path itself, so that nothing later is measured twice. */
export function pathAtSize(nest: readonly Path[], size: number): Path {
  const { low, high, share } = between(size, nest.length);
  if (share === 0) return nest[low]!;
  if (share === 1) return nest[high]!;
  const b = nest[high]!;
  return nest[low]!.map((p, i) => lerp(p, b[i]!, share));
}

/** Sizes along one edge: at its start, at each of its level crossings, at its end. */
export interface EdgeSizes {
  readonly start: number;
  readonly crossings: readonly number[];
  readonly end: number;
}

export interface BlendedEdge {
  readonly edge: Edge<'one'>;
  /** Where a place of the nest's edge (same cubic, same t in every size) lies on the blended edge. */
  readonly place: (nest: PathPlace) => PathPlace;
}

/**
 * One edge with the size running along it. Constant size: every point interpolated. Varying size: the size is a monotone C1
 * function of arc length through the level crossings (`monotone`), each point is interpolated at its own size, and the curve so
 * defined is drawn within CURVE_MM. Legs of darts and folds stay straight where the nest draws them straight.
 */
export function blendEdge(edge: Edge<'nest'>, sizes: EdgeSizes): BlendedEdge {
  const nest = edge.path;
  const count = nest.length;
  const constant = sizes.crossings.every((s) => s === sizes.start) && sizes.end === sizes.start;
  const straightKind = edge.kind === 'dart' || edge.kind === 'fold';
  if (constant || (straightKind && nest.every(pathIsStraight))) {
    const path = constant
      ? pathAtSize(nest, sizes.start)
      : linePath(
          pointAtSize(
            nest.map((p) => p[0]!),
            sizes.start,
          ),
          pointAtSize(
            nest.map((p) => p[p.length - 1]!),
            sizes.end,
          ),
        );
    return {
      edge: {
        ...edge,
        path,
        crossings: edge.crossings.map((c, i) => ({
          level: c.level,
          at: numberAtSize(c.at, sizes.crossings[i]!),
        })),
        notches: edge.notches.map((n) => ({ ...n, at: numberAtSize(n.at, (sizes.start + sizes.end) / 2) })),
      },
      place: constant ? (p) => p : (p) => ({ cubic: 0, t: (p.cubic + p.t) / cubicCount(nest[0]!) }),
    };
  }

  const all = [sizes.start, ...sizes.crossings, sizes.end];
  // Arc length is taken on one middling size, so that it is one coordinate for every size of the edge.
  const ruler = pathAtSize(nest, (Math.min(...all) + Math.max(...all)) / 2);
  const last = cubicCount(ruler) - 1;
  const places: PathPlace[] = [
    { cubic: 0, t: 0 },
    ...edge.crossings.map((c, i) => placeAtSize(nest, c.at, sizes.crossings[i]!)),
    { cubic: last, t: 1 },
  ];
  const xs = places.map((p) => lengthAtPlace(ruler, p));
  // A crossing on the corner itself adds nothing: the corner's own size holds there.
  const kept = xs.map(
    (x, i) => i === 0 || i === xs.length - 1 || (x > xs[0]! && x < xs[xs.length - 1]! && x > xs[i - 1]!),
  );
  const knotX = xs.filter((_, i) => kept[i]);
  const knotZ = all.filter((_, i) => kept[i]);
  const field = monotone(knotX, knotZ);
  const along = lengthRuler(ruler);

  const [a, b, r] = [newMoving(), newMoving(), newMoving()];
  const to = (cubic: number, t: number, later: boolean, out: Moving): void => {
    const x = along(cubic, t);
    const size = field.value(x);
    const slope = field.slope(x);
    const low = lowerOf(size, slope > 0 === later, count);
    const share = size - low;
    writePlace(nest[low]!, cubic, t, a);
    writePlace(nest[count === 1 ? low : low + 1]!, cubic, t, b);
    writePlace(ruler, cubic, t, r);
    const speed = slope * norm(r.vx, r.vy);
    out.x = a.x + (b.x - a.x) * share;
    out.y = a.y + (b.y - a.y) * share;
    out.vx = a.vx + (b.vx - a.vx) * share + (b.x - a.x) * speed;
    out.vy = a.vy + (b.vy - a.vy) * share + (b.y - a.y) * speed;
  };

  const breaks = [...places];
  for (let k = 0; k + 1 < knotX.length; k++) {
    for (const x of wholeSizes(field.value, knotX[k]!, knotX[k + 1]!, knotZ[k]!, knotZ[k + 1]!)) {
      breaks.push(placeAtLength(ruler, x));
    }
  }
  const drawn = redrawPath(ruler, to, breaks, CURVE_MM / 2);
  const share = (place: PathPlace): number => shareAtPlace(drawn.path, drawn.place(place));
  return {
    edge: {
      ...edge,
      path: drawn.path,
      crossings: edge.crossings.map((c, i) => ({ level: c.level, at: share(places[i + 1]!) })),
      notches: edge.notches.map((n) => ({ ...n, at: share(notchPlace(n.at)) })),
    },
    place: drawn.place,
  };

  /** The place where the notch lies on the size that holds there; the size moves with the place, hence the few rounds. */
  function notchPlace(at: readonly number[]): PathPlace {
    let size = sizes.start;
    let place: PathPlace = { cubic: 0, t: 0 };
    for (let round = 0; round < 4; round++) {
      place = placeAtSize(nest, at, size);
      size = field.value(along(place.cubic, place.t));
    }
    return place;
  }
}

/** The place of a printed share at a fractional size: between its places on the two sizes around, by parameter. */
function placeAtSize(nest: readonly Path[], at: readonly number[], size: number): PathPlace {
  const { low, high, share } = between(size, nest.length);
  const a = placeAtShare(nest[low]!, at[low]!);
  if (share === 0) return a;
  const b = placeAtShare(nest[high]!, at[high]!);
  const u = a.cubic + a.t + (b.cubic + b.t - a.cubic - a.t) * share;
  const cubic = Math.min(cubicCount(nest[low]!) - 1, Math.max(0, Math.floor(u)));
  return { cubic, t: Math.min(1, Math.max(0, u - cubic)) };
}

/** The lower of the two sizes around `size`; exactly on a printed one, of the pair above (`up`) or below it. */
function lowerOf(size: number, up: boolean, count: number): number {
  if (count === 1) return 0;
  const near = Math.round(size);
  const floor = Math.abs(size - near) < 1e-9 ? (up ? near : near - 1) : Math.floor(size);
  return Math.min(count - 2, Math.max(0, floor));
}

/** Lengths at which a monotone size passes a printed size between two knots: the grade may bend there, so the fit must know. */
function wholeSizes(value: (x: number) => number, x0: number, x1: number, z0: number, z1: number): number[] {
  const out: number[] = [];
  const rising = z1 > z0;
  for (let whole = Math.floor(Math.min(z0, z1)) + 1; whole < Math.max(z0, z1); whole++) {
    let lo = x0;
    let hi = x1;
    for (let k = 0; k < 50; k++) {
      const middle = (lo + hi) / 2;
      if (value(middle) < whole === rising) lo = middle;
      else hi = middle;
    }
    out.push((lo + hi) / 2);
  }
  return out;
}
