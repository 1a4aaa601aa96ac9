import {
  add,
  cross,
  distance,
  dot,
  fitPath,
  lerp,
  linePath,
  nearestPlace,
  pathAt,
  pathEnd,
  pathLength,
  pathStart,
  placeTangent,
  scale,
  sub,
  unit,
  type Path,
  type Point,
} from '../../geometry/index.ts';
import { greyAt } from './image.ts';
import { darkestWay } from './live-line.ts';
import { planeMm, planePixel, type Plane } from './plane.ts';

/** A clicked corner of the outline; `straight` says how it is joined to the one before. */
export interface Click {
  readonly at: Point;
  readonly straight?: boolean;
}

/** One traced run between two clicks, mm. `contrast`: how much darker the line is than its ground, 0..1. */
export interface Traced {
  readonly path: Path;
  readonly contrast: number;
}

/** Below this a "line" is no darker than the grain of the picture. */
export const FAINT_CONTRAST = 0.08;

/** Centre of the dark line nearest to a place, along a direction (px): the darkness-weighted middle within `reach`. Null where nothing is dark. */
function centre(
  plane: Plane,
  at: Point,
  across: Point,
  reach: number,
): { shift: number; contrast: number } | null {
  const steps = Math.ceil(reach * 2);
  const values: number[] = [];
  for (let i = -steps; i <= steps; i++) {
    const s = (i * reach) / steps;
    values.push(greyAt(plane.image, at.x + across.x * s, at.y + across.y * s));
  }
  const ground = values.toSorted((a, b) => a - b)[Math.floor(values.length * 0.75)]!;
  const most = ground - Math.min(...values);
  if (most < 255 * FAINT_CONTRAST) return null;
  // Of several lines side by side the one that is meant is the nearest, not the heaviest.
  const bottoms = values.flatMap((v, i) =>
    v <= (values[i - 1] ?? 255) && v <= (values[i + 1] ?? 255) && ground - v > most / 2 ? [i] : [],
  );
  const bottom = bottoms.reduce((best, i) => (Math.abs(i - steps) < Math.abs(best - steps) ? i : best));
  const depth = ground - values[bottom]!;
  let weight = 0;
  let sum = 0;
  // Only the dark hill around its darkest sample, so that a neighbouring size does not pull.
  for (const step of [1, -1]) {
    for (let i = step === 1 ? bottom : bottom - 1; i >= 0 && i < values.length; i += step) {
      const d = ground - values[i]! - depth * 0.25;
      if (d <= 0) break;
      weight += d;
      sum += d * (((i - steps) * reach) / steps);
    }
  }
  return weight > 0 ? { shift: sum / weight, contrast: depth / 255 } : null;
}

function tangent(points: readonly Point[], i: number, span: number): Point {
  const a = points[Math.max(0, i - span)]!;
  const b = points[Math.min(points.length - 1, i + span)]!;
  const d = distance(a, b) || 1;
  return { x: (b.x - a.x) / d, y: (b.y - a.y) / d };
}

/** Pixels of a rough way moved to the middle of the dark line. */
function refine(plane: Plane, way: readonly Point[], reach: number): { points: Point[]; contrast: number } {
  const points: Point[] = [];
  let contrast = 0;
  let seen = 0;
  way.forEach((p, i) => {
    const along = tangent(way, i, 4);
    const found = centre(plane, p, { x: -along.y, y: along.x }, reach);
    if (found) {
      points.push({ x: p.x - along.y * found.shift, y: p.y + along.x * found.shift });
      contrast += found.contrast;
      seen++;
    } else if (i === 0 || i === way.length - 1) points.push(p);
  });
  return { points, contrast: way.length > 0 ? (contrast / Math.max(1, seen)) * (seen / way.length) : 0 };
}

/** The least-squares line through points: a place on it, and its direction. */
function leastLine(points: readonly Point[]): { at: Point; along: Point } {
  const n = points.length;
  const at = { x: points.reduce((s, p) => s + p.x, 0) / n, y: points.reduce((s, p) => s + p.y, 0) / n };
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const p of points) {
    xx += (p.x - at.x) ** 2;
    xy += (p.x - at.x) * (p.y - at.y);
    yy += (p.y - at.y) ** 2;
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  return { at, along: { x: Math.cos(angle), y: Math.sin(angle) } };
}

/** So many times as far off as half of the points are, a point is of another line: the other leg of a dart, a notch. */
const OTHER = 3;

/** Straight run: the line through the dark middles, without those that lie far off it, its ends nearest the two clicks. */
function straight(points: readonly Point[], from: Point, to: Point): Path {
  let kept = points;
  for (let round = 0; round < 3; round++) {
    const { at, along } = leastLine(kept);
    const off = (p: Point): number => Math.abs(cross(along, sub(p, at)));
    const usual = kept.map(off).toSorted((a, b) => a - b)[Math.floor(kept.length / 2)]!;
    const near = points.filter((p) => off(p) <= OTHER * usual);
    if (near.length < points.length / 2 || near.length < 2) break;
    kept = near;
  }
  const { at, along } = leastLine(kept);
  const foot = (p: Point): Point => add(at, scale(along, dot(sub(p, at), along)));
  return linePath(foot(from), foot(to));
}

/** The way a run goes at its end is taken over so much of it, mm. */
const END_MM = 12;
/** Runs that turn by less than this where they meet (radians) have no place of their own where they cross. */
const ALIKE = 0.1;

/** Where two runs would meet if they went on straight, no farther than `most` mm from the middle between their ends; that middle where they run nearly alike. */
export function meeting(a: Path, b: Path, most: number): Point {
  const [p, q] = [pathEnd(a), pathStart(b)];
  const end = (path: Path): number => Math.min(0.1, END_MM / pathLength(path));
  const u = unit(sub(p, pathAt(a, 1 - end(a))));
  const v = unit(sub(pathAt(b, end(b)), q));
  const turn = cross(u, v);
  const middle = lerp(p, q, 0.5);
  if (Math.abs(turn) < ALIKE) return middle;
  const at = add(p, scale(u, cross(sub(q, p), v) / turn));
  return distance(at, middle) < most ? at : middle;
}

/** Farther than this from its click no corner is sought, mm: a hand comes nearer. */
const CLICK_MM = 6;

interface Run {
  readonly points: readonly Point[];
  readonly contrast: number;
  readonly straight: boolean;
}

/**
 * Traces a line of a flat picture through clicked corners (mm): between two clicks the darkest way, moved to the middle of the line,
 * and fitted by cubics within `tolerance` mm. Runs begin and end where they meet their neighbours: a hand is not as exact as the lines are.
 */
export function traceLine(plane: Plane, clicks: readonly Click[], tolerance = 0.3): Traced[] {
  const reach = Math.max(3, 1.5 / plane.mmPerPixel);
  const runs = clicks.slice(1).map((click, i): Run => {
    const a = planePixel(plane, clicks[i]!.at);
    const b = planePixel(plane, click.at);
    const way = click.straight ? evenly(a, b) : darkestWay(plane.image, a, b);
    const { points, contrast } = refine(plane, way, reach);
    return {
      points: points.map((p) => planeMm(plane, p)),
      contrast,
      straight: click.straight === true,
    };
  });
  const around = clicks.length > 2 && clicks[0]!.at === clicks.at(-1)!.at;
  // Beside a corner the neighbour’s line is as near as the run’s own: there its points say nothing.
  const inner = runs.map(({ points }, i) => {
    const clear = (p: Point, k: number): boolean => distance(p, clicks[k]!.at) > reach * plane.mmPerPixel;
    const kept = points.filter(
      (p) => ((i === 0 && !around) || clear(p, i)) && ((i === runs.length - 1 && !around) || clear(p, i + 1)),
    );
    return kept.length > 1 && kept.length > points.length / 2 ? kept : points;
  });
  const rough = runs.map((run, i): Path => {
    const [from, to] = [clicks[i]!.at, clicks[i + 1]!.at];
    const points = inner[i]!;
    if (points.length < 2) return linePath(from, to);
    return run.straight ? straight(points, from, to) : fitPath(smoothed(points), tolerance);
  });
  const corner = (i: number): Point => {
    const before = rough[i === 0 && around ? rough.length - 1 : i - 1];
    const after = rough[i === rough.length && around ? 0 : i];
    if (!before) return pathStart(after!);
    if (!after) return pathEnd(before);
    const at = meeting(before, after, 2 * CLICK_MM);
    return distance(at, clicks[i]!.at) < CLICK_MM ? at : lerp(pathEnd(before), pathStart(after), 0.5);
  };
  const corners = clicks.map((_, i) => corner(i));
  return runs.map((run, i) => {
    const [from, to] = [corners[i]!, corners[i + 1]!];
    const points = inner[i]!;
    const path =
      run.straight || points.length < 2
        ? linePath(from, to)
        : fitPath([from, ...smoothed(points), to], tolerance);
    return { path, contrast: run.contrast };
  });
}

function evenly(a: Point, b: Point): Point[] {
  const n = Math.max(2, Math.round(distance(a, b)));
  return Array.from({ length: n + 1 }, (_, i) => ({
    x: a.x + ((b.x - a.x) * i) / n,
    y: a.y + ((b.y - a.y) * i) / n,
  }));
}

/** Single pixels step by whole diagonals; a short running mean takes the steps out without moving the curve. */
function smoothed(points: readonly Point[]): Point[] {
  return points.map((p, i) => {
    const span = Math.min(3, i, points.length - 1 - i);
    if (span === 0) return p;
    const near = points.slice(i - span, i + span + 1);
    return {
      x: near.reduce((s, q) => s + q.x, 0) / near.length,
      y: near.reduce((s, q) => s + q.y, 0) / near.length,
    };
  });
}

/**
 * Further sizes with the first as a guide: the dark lines met when walking outwards (`from`..`to` mm, negative inwards) across the guide.
 * Gives one path per line that runs along the whole guide, nearest first.
 */
export function traceAlong(plane: Plane, guide: Path, from: number, to: number, tolerance = 0.3): Path[] {
  const length = pathLength(guide);
  const count = Math.max(8, Math.round(length / 4));
  const stations = Array.from({ length: count + 1 }, (_, i) => {
    const at = pathAt(guide, i / count);
    const along = placeTangent(guide, nearestPlace(guide, at).place);
    return { at, across: { x: along.y, y: -along.x } };
  });
  const peaks = stations.map(({ at, across }) => darkPeaks(plane, at, across, from, to));
  const lines: Path[] = [];
  for (const first of peaks[0]!) {
    let last = first;
    const chain = [first];
    for (const next of peaks.slice(1)) {
      const nearest = next.toSorted((a, b) => Math.abs(a - last) - Math.abs(b - last))[0];
      // A graded line drifts slowly from its guide: under 1.5 mm in 4 mm of seam.
      if (nearest === undefined || Math.abs(nearest - last) > 1.5) break;
      chain.push(nearest);
      last = nearest;
    }
    if (chain.length < stations.length) continue;
    const points = chain.map((s, i) => {
      const { at, across } = stations[i]!;
      return { x: at.x + across.x * s, y: at.y + across.y * s };
    });
    lines.push(fitPath(points, tolerance));
  }
  return lines;
}

/** Distances (mm) at which a dark line is crossed. */
function darkPeaks(plane: Plane, at: Point, across: Point, from: number, to: number): number[] {
  const step = plane.mmPerPixel / 2;
  const n = Math.max(2, Math.round(Math.abs(to - from) / step));
  const values = Array.from({ length: n + 1 }, (_, i) => {
    const s = from + ((to - from) * i) / n;
    const p = planePixel(plane, { x: at.x + across.x * s, y: at.y + across.y * s });
    return greyAt(plane.image, p.x, p.y);
  });
  const ground = values.toSorted((a, b) => a - b)[Math.floor(values.length * 0.75)]!;
  const found: number[] = [];
  const limit = ground - 255 * FAINT_CONTRAST;
  for (let i = 0; i < values.length;) {
    if (values[i]! >= limit) {
      i++;
      continue;
    }
    let weight = 0;
    let sum = 0;
    while (i < values.length && values[i]! < limit) {
      weight += ground - values[i]!;
      sum += (ground - values[i]!) * i;
      i++;
    }
    found.push(from + ((to - from) * (sum / weight)) / n);
  }
  return found;
}

/** The other half of a piece drawn to its fold: mirrored about the line from `a` to `b`, walked so that the outline goes on. */
export function mirrorAbout(path: Path, a: Point, b: Point): Path {
  const d = distance(a, b);
  const u = { x: (b.x - a.x) / d, y: (b.y - a.y) / d };
  return path
    .map((p) => {
      const along = (p.x - a.x) * u.x + (p.y - a.y) * u.y;
      const foot = { x: a.x + u.x * along, y: a.y + u.y * along };
      return { x: 2 * foot.x - p.x, y: 2 * foot.y - p.y };
    })
    .toReversed();
}
