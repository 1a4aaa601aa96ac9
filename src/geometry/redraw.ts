import { cubicCount } from './cubic.ts';
import type { Path, PathPlace, Point } from './types.ts';
import { norm } from './vector.ts';

/** A path drawn anew from an old one, and where each place of the old one has gone. */
export interface Redrawn {
  readonly path: Path;
  readonly place: (old: PathPlace) => PathPlace;
  /** Where a place of the new one has come from. */
  readonly origin: (now: PathPlace) => PathPlace;
}

/** A place of a curve and the curve's derivative there by t. Filled in by whoever is asked: thousands of answers, one object. */
export interface Moving {
  x: number;
  y: number;
  vx: number;
  vy: number;
}

export const newMoving = (): Moving => ({ x: 0, y: 0, vx: 0, vy: 0 });

/** Writes the place (cubic, t) of a path. */
export function writePlace(path: Path, cubic: number, t: number, out: Moving): void {
  const i = cubic * 3;
  const a = path[i]!;
  const b = path[i + 1]!;
  const c = path[i + 2]!;
  const d = path[i + 3]!;
  const s = 1 - t;
  const w0 = s * s * s;
  const w1 = 3 * s * s * t;
  const w2 = 3 * s * t * t;
  const w3 = t * t * t;
  out.x = w0 * a.x + w1 * b.x + w2 * c.x + w3 * d.x;
  out.y = w0 * a.y + w1 * b.y + w2 * c.y + w3 * d.y;
  out.vx = 3 * (s * s * (b.x - a.x) + 2 * s * t * (c.x - b.x) + t * t * (d.x - c.x));
  out.vy = 3 * (s * s * (b.y - a.y) + 2 * s * t * (c.y - b.y) + t * t * (d.y - c.y));
}

/** Writes where the place (cubic, t) of the old path lies now. `later` asks just after t, else just before. */
export type Redraw = (cubic: number, t: number, later: boolean, out: Moving) => void;

/** Halving stops here: a span is then a thousandth of its cubic. */
const DEEPEST = 10;
/** Cuts this near to one another or to a cubic's end (by t) are one: a place is found by length to 1e-6 mm, and a span shorter than that has no direction. */
const ONE_CUT = 1e-5;

interface Span {
  readonly cubic: number;
  readonly t0: number;
  readonly t1: number;
}

/**
 * Draws the curve that `to` gives for each place of `path`, as cubics with the exact points and directions at the span ends,
 * halved until they lie within `tolerance` mm of it (measured across the curve; with `places` also along it, so that every place lies
 * where `to` puts it). `breaks` are places that become span ends in
 * any case, so that they are met exactly. Directions from before and after a span end are averaged, so the drawn curve has no
 * corner inside a cubic of the old path.
 */
export function redrawPath(
  path: Path,
  to: Redraw,
  breaks: readonly PathPlace[],
  tolerance: number,
  places = false,
): Redrawn {
  const here = newMoving();
  to(0, 0, true, here);
  const points: Point[] = [{ x: here.x, y: here.y }];
  const spans: Span[] = [];

  const draw = (
    cubic: number,
    t0: number,
    t1: number,
    v0: Point,
    d: Point,
    v1: Point,
    depth: number,
  ): void => {
    const a = points[points.length - 1]!;
    const h = (t1 - t0) / 3;
    const b = { x: a.x + v0.x * h, y: a.y + v0.y * h };
    const c = { x: d.x - v1.x * h, y: d.y - v1.y * h };
    if (depth < DEEPEST && !near(cubic, t0, t1, a, b, c, d)) {
      const t = (t0 + t1) / 2;
      to(cubic, t, true, here);
      const middle = { x: here.x, y: here.y };
      const v = { x: here.vx, y: here.vy };
      draw(cubic, t0, t, v0, middle, v, depth + 1);
      draw(cubic, t, t1, v, d, v1, depth + 1);
      return;
    }
    points.push(b, c, d);
    spans.push({ cubic, t0, t1 });
  };

  const near = (cubic: number, t0: number, t1: number, a: Point, b: Point, c: Point, d: Point): boolean => {
    for (let u = 0.25; u < 1; u += 0.25) {
      const s = 1 - u;
      const x = s * s * s * a.x + 3 * s * s * u * b.x + 3 * s * u * u * c.x + u * u * u * d.x;
      const y = s * s * s * a.y + 3 * s * s * u * b.y + 3 * s * u * u * c.y + u * u * u * d.y;
      to(cubic, t0 + (t1 - t0) * u, true, here);
      const speed = norm(here.vx, here.vy);
      const off =
        speed > 0 && !places
          ? Math.abs((x - here.x) * here.vy - (y - here.y) * here.vx) / speed
          : norm(x - here.x, y - here.y);
      if (!(off <= tolerance)) return false;
    }
    return true;
  };

  for (let cubic = 0; cubic < cubicCount(path); cubic++) {
    let t0 = 0;
    to(cubic, 0, true, here);
    let v0 = { x: here.vx, y: here.vy };
    for (const t1 of cutsOf(cubic, breaks)) {
      to(cubic, t1, false, here);
      const d = { x: here.x, y: here.y };
      let v1 = { x: here.vx, y: here.vy };
      if (t1 < 1) {
        to(cubic, t1, true, here);
        v1 = { x: (v1.x + here.vx) / 2, y: (v1.y + here.vy) / 2 };
      }
      draw(cubic, t0, t1, v0, d, v1, 0);
      t0 = t1;
      v0 = v1;
    }
  }

  const place = (old: PathPlace): PathPlace => {
    for (let i = 0; i < spans.length; i++) {
      const s = spans[i]!;
      if (s.cubic !== old.cubic || old.t > s.t1) continue;
      return { cubic: i, t: Math.min(1, Math.max(0, (old.t - s.t0) / (s.t1 - s.t0))) };
    }
    return { cubic: spans.length - 1, t: 1 };
  };
  const origin = (now: PathPlace): PathPlace => {
    const { cubic, t0, t1 } = spans[now.cubic]!;
    return { cubic, t: t0 + (t1 - t0) * now.t };
  };
  return { path: points, place, origin };
}

/** Parameters at which a cubic is cut, in order, its end the last. */
function cutsOf(cubic: number, breaks: readonly PathPlace[]): readonly number[] {
  const inside = breaks.filter((p) => p.cubic === cubic && p.t > ONE_CUT && p.t < 1 - ONE_CUT);
  if (inside.length === 0) return WHOLE;
  const cuts = [...inside.map((p) => p.t).sort((p, q) => p - q), 1];
  return cuts.filter((t, i) => i === 0 || t - cuts[i - 1]! > ONE_CUT);
}

const WHOLE: readonly number[] = [1];
