import {
  cubicCount,
  distance,
  lengthAtPlace,
  nearestPlace,
  pathBetween,
  pathJoin,
  pathLength,
  placeAtLength,
} from '../../geometry/index.ts';
import type { Path, PathPlace, Point } from '../../geometry/index.ts';
import { outlineCorners } from './corner.ts';
import type { Corner } from './corner.ts';

/** One corner as it lies in every size: a place on each outline. */
export interface AlignedCorner {
  readonly places: readonly PathPlace[];
  /** Turn in the middle size. */
  readonly turn: number;
  /** Sizes where the outline shows no corner there and the place was worked out from the neighbours. */
  readonly guessed: readonly number[];
}

export interface Aligned {
  readonly corners: readonly AlignedCorner[];
  /** Corners seen in some sizes only and left out. */
  readonly dropped: number;
}

/** A corner of another size is the same corner within this of where it should lie, mm. */
const NEAR_MM = 30;

/**
 * The corners all sizes share. The size with the commonest number of corners (the middle one of those) leads; every other size is
 * turned and compared corner by corner. A corner that a size lacks is placed where its neighbours say.
 */
export function alignCorners(outlines: readonly Path[]): Aligned {
  const all = outlines.map(outlineCorners);
  const lead = leader(all.map((corners) => corners.length));
  const base = all[lead]!;
  let dropped = 0;
  const matches = all.map((own, k) => {
    if (k === lead) return base.map((corner): Corner | null => corner);
    const found = matchCorners(base, own);
    dropped += own.length - found.filter((corner) => corner !== null).length;
    return found;
  });
  const corners = base.map((corner, i): AlignedCorner => {
    const guessed: number[] = [];
    const places = outlines.map((path, k): PathPlace => {
      const own = matches[k]![i];
      if (own) return { cubic: own.cubic, t: 0 };
      guessed.push(k);
      return nearestPlace(path, guess(corner.point, i, base, matches[k]!)).place;
    });
    return { places, turn: corner.turn, guessed };
  });
  return { corners: base.length > 1 ? corners : roundCorners(outlines, corners), dropped };
}

/** A ring without two corners is cut in two all the same, at its lowest point (or its one corner) and half way round from there. */
function roundCorners(outlines: readonly Path[], corners: readonly AlignedCorner[]): AlignedCorner[] {
  const first =
    corners[0]?.places ??
    outlines.map((path): PathPlace => {
      const low = path.reduce(
        (best, point, i) => (i % 3 === 0 && i < path.length - 1 && point.y < path[best]!.y ? i : best),
        0,
      );
      return { cubic: low / 3, t: 0 };
    });
  const half = outlines.map((path, k) => {
    const total = pathLength(path);
    return placeAtLength(path, (lengthAtPlace(path, first[k]!) + total / 2) % total);
  });
  return [corners[0] ?? { places: first, turn: 0, guessed: [] }, { places: half, turn: 0, guessed: [] }];
}

function leader(counts: readonly number[]): number {
  const often = new Map<number, number>();
  for (const count of counts) often.set(count, (often.get(count) ?? 0) + 1);
  const most = [...often].toSorted((a, b) => b[1] - a[1] || b[0] - a[0])[0]![0];
  const those = counts.flatMap((count, i) => (count === most ? [i] : []));
  return those[Math.floor(those.length / 2)]!;
}

/** For each base corner the own corner that is it, or null. */
function matchCorners(base: readonly Corner[], own: readonly Corner[]): (Corner | null)[] {
  if (own.length === 0) return base.map(() => null);
  if (own.length === base.length) {
    let best: { turnBy: number; cost: number } | null = null;
    for (let turnBy = 0; turnBy < own.length; turnBy++) {
      const cost = cyclicCost(base, own, turnBy);
      if (!best || cost < best.cost) best = { turnBy, cost };
    }
    return base.map((_, i) => own[(i + best!.turnBy) % own.length]!);
  }
  // Unlike counts: each takes the nearest that turns the same way, in order round the outline.
  const shift = drift(base, own);
  const taken = new Set<number>();
  return base.map((corner) => {
    let best = -1;
    let cost = NEAR_MM;
    own.forEach((other, k) => {
      if (taken.has(k) || Math.sign(other.turn) !== Math.sign(corner.turn)) return;
      const far =
        Math.hypot(other.point.x - corner.point.x - shift.x, other.point.y - corner.point.y - shift.y) +
        10 * Math.abs(other.turn - corner.turn);
      if (far < cost) {
        cost = far;
        best = k;
      }
    });
    if (best < 0) return null;
    taken.add(best);
    return own[best]!;
  });
}

/** How badly corners fit when own corner (i + turnBy) is base corner i: distances less their common drift, and unlike turns. */
function cyclicCost(base: readonly Corner[], own: readonly Corner[], turnBy: number): number {
  const n = base.length;
  let mx = 0;
  let my = 0;
  for (let i = 0; i < n; i++) {
    mx += (own[(i + turnBy) % n]!.point.x - base[i]!.point.x) / n;
    my += (own[(i + turnBy) % n]!.point.y - base[i]!.point.y) / n;
  }
  let cost = 0;
  for (let i = 0; i < n; i++) {
    const a = base[i]!;
    const b = own[(i + turnBy) % n]!;
    cost +=
      (b.point.x - a.point.x - mx) ** 2 + (b.point.y - a.point.y - my) ** 2 + (20 * (b.turn - a.turn)) ** 2;
  }
  return cost;
}

function drift(base: readonly Corner[], own: readonly Corner[]): Point {
  const mean = (list: readonly Corner[], axis: 'x' | 'y') =>
    list.reduce((sum, corner) => sum + corner.point[axis], 0) / list.length;
  return { x: mean(own, 'x') - mean(base, 'x'), y: mean(own, 'y') - mean(base, 'y') };
}

/** Where a missing corner should lie: moved as its matched neighbours are, the nearer counting more. */
function guess(point: Point, i: number, base: readonly Corner[], own: readonly (Corner | null)[]): Point {
  let weight = 0;
  let x = 0;
  let y = 0;
  own.forEach((other, k) => {
    if (!other || k === i) return;
    const w = 1 / (1 + distance(point, base[k]!.point)) ** 2;
    weight += w;
    x += w * (other.point.x - base[k]!.point.x);
    y += w * (other.point.y - base[k]!.point.y);
  });
  return weight === 0 ? point : { x: point.x + x / weight, y: point.y + y / weight };
}

/** Runs of a closed outline between places in order; the last runs over the outline's start. One place: once round from there. */
export function cutAtPlaces(path: Path, places: readonly PathPlace[]): Path[] {
  const end: PathPlace = { cubic: cubicCount(path) - 1, t: 1 };
  const start: PathPlace = { cubic: 0, t: 0 };
  const order = (place: PathPlace) => place.cubic + place.t;
  return places.map((from, i) => {
    const to = places[(i + 1) % places.length]!;
    if (order(to) > order(from)) return pathBetween(path, from, to);
    const head = order(from) < order(end) ? [pathBetween(path, from, end)] : [];
    const tail = order(to) > 0 ? [pathBetween(path, start, to)] : [];
    return pathJoin(sealed([...head, ...tail]));
  });
}

/** Rounding may leave a hair between an outline's end and its start. */
function sealed(paths: Path[]): Path[] {
  return paths.map((path, i) => (i === 0 ? path : [paths[i - 1]!.at(-1)!, ...path.slice(1)]));
}
