import { cubicCount } from './cubic.ts';
import type { Path, PathPlace, Point } from './types.ts';
import { norm } from './vector.ts';

/** A path drawn anew from an old one, and where each place of the old one has gone. */
export interface Redrawn {
  readonly path: Path;
  readonly place: (old: PathPlace) => PathPlace;
}

/** Where the place (cubic, t) of the old path lies now, and the new curve's derivative by that t. `later` asks just after t, else just before. */
export type Redraw = (cubic: number, t: number, later: boolean) => { point: Point; velocity: Point };

/** Halving stops here: a span is then a thousandth of its cubic. */
const DEEPEST = 10;

interface Span {
  readonly cubic: number;
  readonly t0: number;
  readonly t1: number;
}

/**
 * Draws the curve that `to` gives for each place of `path`, as cubics with the exact points and directions at the span ends,
 * halved until they lie within `tolerance` mm of it (measured across the curve). `breaks` are places that become span ends in
 * any case, so that they are met exactly. Directions from before and after a span end are averaged, so the drawn curve has no
 * corner inside a cubic of the old path.
 */
export function redrawPath(path: Path, to: Redraw, breaks: readonly PathPlace[], tolerance: number): Redrawn {
  const points: Point[] = [to(0, 0, true).point];
  const spans: Span[] = [];

  const draw = (cubic: number, t0: number, t1: number, v0: Point, v1: Point, depth: number): void => {
    const a = points[points.length - 1]!;
    const d = to(cubic, t1, false).point;
    const h = (t1 - t0) / 3;
    const b = { x: a.x + v0.x * h, y: a.y + v0.y * h };
    const c = { x: d.x - v1.x * h, y: d.y - v1.y * h };
    if (depth < DEEPEST && !near(cubic, t0, t1, a, b, c, d)) {
      const t = (t0 + t1) / 2;
      const { velocity } = to(cubic, t, true);
      draw(cubic, t0, t, v0, velocity, depth + 1);
      draw(cubic, t, t1, velocity, v1, depth + 1);
      return;
    }
    points.push(b, c, d);
    spans.push({ cubic, t0, t1 });
  };

  const near = (cubic: number, t0: number, t1: number, a: Point, b: Point, c: Point, d: Point): boolean => {
    for (const u of [0.25, 0.5, 0.75]) {
      const s = 1 - u;
      const x = s * s * s * a.x + 3 * s * s * u * b.x + 3 * s * u * u * c.x + u * u * u * d.x;
      const y = s * s * s * a.y + 3 * s * s * u * b.y + 3 * s * u * u * c.y + u * u * u * d.y;
      const { point, velocity } = to(cubic, t0 + (t1 - t0) * u, true);
      const speed = norm(velocity.x, velocity.y);
      const off =
        speed > 0
          ? Math.abs((x - point.x) * velocity.y - (y - point.y) * velocity.x) / speed
          : norm(x - point.x, y - point.y);
      if (!(off <= tolerance)) return false;
    }
    return true;
  };

  for (let cubic = 0; cubic < cubicCount(path); cubic++) {
    const cuts = [
      0,
      ...breaks
        .filter((p) => p.cubic === cubic && p.t > 1e-9 && p.t < 1 - 1e-9)
        .map((p) => p.t)
        .sort((p, q) => p - q),
      1,
    ].filter((t, i, all) => i === 0 || t - all[i - 1]! > 1e-9);
    const velocities = cuts.map((t, i) => {
      if (i === 0) return to(cubic, 0, true).velocity;
      const before = to(cubic, t, false).velocity;
      if (i === cuts.length - 1) return before;
      const after = to(cubic, t, true).velocity;
      return { x: (before.x + after.x) / 2, y: (before.y + after.y) / 2 };
    });
    for (let i = 0; i + 1 < cuts.length; i++) {
      draw(cubic, cuts[i]!, cuts[i + 1]!, velocities[i]!, velocities[i + 1]!, 0);
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
  return { path: points, place };
}
