import { boxesTouch, pathBetween, pointsBox } from '../../geometry/index.ts';
import type { Box, Cubic, Path, Point } from '../../geometry/index.ts';
import { boxInside } from './drawing.ts';

/** A run of the path inside the box; `whole` when nothing was cut. */
export interface CutRun {
  readonly path: Path;
  readonly whole: boolean;
}

/**
 * The parts of a path inside a box: what a clipped page shows of a line. Exact on the curve: cubics are split where
 * they cross the sides. A closed path whose start lies inside gives one run through its start.
 */
export function cutToBox(path: Path, box: Box, closed: boolean): CutRun[] {
  const around = pointsBox(path);
  if (!boxesTouch(around, box)) return [];
  if (boxInside(around, box)) return [{ path, whole: true }];
  const runs: Point[][] = [];
  let open: Point[] | null = null;
  for (let i = 0; i + 3 < path.length; i += 3) {
    const cubic: Cubic = [path[i]!, path[i + 1]!, path[i + 2]!, path[i + 3]!];
    const cuts = [0, ...sideCrossings(cubic, box), 1];
    for (let k = 0; k + 1 < cuts.length; k++) {
      const t0 = cuts[k]!;
      const t1 = cuts[k + 1]!;
      if (t1 - t0 < 1e-12) continue;
      if (!holds(box, cubicAt(cubic, (t0 + t1) / 2))) {
        open = null;
        continue;
      }
      const part = pathBetween(cubic, { cubic: 0, t: t0 }, { cubic: 0, t: t1 });
      if (open) open.push(part[1]!, part[2]!, part[3]!);
      else {
        open = [...part];
        runs.push(open);
      }
    }
  }
  if (closed && runs.length > 1) {
    const first = runs[0]!;
    const last = runs.at(-1)!;
    if (samePoint(last.at(-1)!, first[0]!)) {
      runs.pop();
      runs[0] = [...last, ...first.slice(1)];
    }
  }
  const start = path[0]!;
  return runs.map((run) => ({
    path: run,
    whole: closed && runs.length === 1 && samePoint(run[0]!, start) && samePoint(run.at(-1)!, start),
  }));
}

const samePoint = (a: Point, b: Point): boolean => Math.abs(a.x - b.x) < 1e-7 && Math.abs(a.y - b.y) < 1e-7;

const holds = (box: Box, { x, y }: Point): boolean =>
  x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;

function cubicAt([p, q, r, s]: Cubic, t: number): Point {
  const u = 1 - t;
  const a = u * u * u;
  const b = 3 * u * u * t;
  const c = 3 * u * t * t;
  const d = t * t * t;
  return { x: a * p.x + b * q.x + c * r.x + d * s.x, y: a * p.y + b * q.y + c * r.y + d * s.y };
}

function sideCrossings(cubic: Cubic, box: Box): number[] {
  const xs = cubic.map((point) => point.x);
  const ys = cubic.map((point) => point.y);
  const found = [
    ...valueCrossings(xs, box.minX),
    ...valueCrossings(xs, box.maxX),
    ...valueCrossings(ys, box.minY),
    ...valueCrossings(ys, box.maxY),
  ];
  return found.toSorted((a, b) => a - b);
}

/** Parameters where the Bernstein cubic takes the value: sign changes isolated by halving, then bisected. */
export function valueCrossings(coefficients: readonly number[], value: number): number[] {
  const found: number[] = [];
  const walk = (c: readonly number[], t0: number, t1: number, depth: number): void => {
    const below = c.filter((v) => v < 0).length;
    if (below === 0 || below === c.length) return;
    // A part lying along the side neither crosses nor may split for ever.
    if (depth > 40 || c.every((v) => Math.abs(v) < 1e-9)) return;
    const [a, b, d, e] = c as [number, number, number, number];
    // One sign change of the coefficients means exactly one crossing: the variation-diminishing property.
    const changes = c.slice(1).filter((v, i) => v < 0 !== c[i]! < 0).length;
    if (changes === 1 && a < 0 !== e < 0) {
      found.push(t0 + (t1 - t0) * bisect(c));
      return;
    }
    const ab = (a + b) / 2;
    const bd = (b + d) / 2;
    const de = (d + e) / 2;
    const abd = (ab + bd) / 2;
    const bde = (bd + de) / 2;
    const middle = (abd + bde) / 2;
    const tm = (t0 + t1) / 2;
    walk([a, ab, abd, middle], t0, tm, depth + 1);
    walk([middle, bde, de, e], tm, t1, depth + 1);
  };
  walk(
    coefficients.map((c) => c - value),
    0,
    1,
    0,
  );
  return found;
}

function bisect(c: readonly number[]): number {
  const [a, b, d, e] = c as [number, number, number, number];
  const at = (t: number): number => {
    const u = 1 - t;
    return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * d + t * t * t * e;
  };
  let low = 0;
  let high = 1;
  for (let i = 0; i < 52; i++) {
    const t = (low + high) / 2;
    if (at(t) < 0 === a < 0) low = t;
    else high = t;
  }
  return (low + high) / 2;
}

/** What two clips leave. */
export function clipMeet(a: Box | null, b: Box): Box {
  if (!a) return b;
  return {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
}
