import {
  CURVE_MM,
  cubicCount,
  fitPath,
  linePath,
  pathEnd,
  pathFlatten,
  pathJoin,
  pathLength,
  pathPart,
  pathStart,
  placeAtShare,
  placeTangent,
  pointsBox,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { pointsAtShares } from './even.ts';

/** Samples taken on each span of a fit; enough that a cubic cannot hide a bump between two. */
const SAMPLES = 24;
/** A run that leaves its chord by less is straight. */
const STRAIGHT = 0.02;
/** Spans tried, few first. */
const SPANS = [1, 2, 3, 4, 6, 8, 12, 16, 24, 32];

export interface Refit {
  /** One path per size, all with the same number of cubics, joined at the same shares of their length. */
  readonly paths: readonly Path[];
  /** Largest distance from what was read, mm. */
  readonly off: number;
}

/** Gives the runs of one edge in all sizes the same number of cubics, within CURVE_MM of what was read. Ends stay where they are. */
export function sameTopology(paths: readonly Path[]): Refit {
  if (paths.every(isStraight)) {
    const lines = paths.map((path) => linePath(pathStart(path), pathEnd(path)));
    return { paths: lines, off: Math.max(...paths.map((path) => chordOff(path))) };
  }
  if (alreadySame(paths)) return { paths, off: 0 };
  let best: Refit | undefined;
  for (const spans of SPANS) {
    const fitted: Path[] = [];
    let off = 0;
    for (const path of paths) {
      const one = fitSpans(path, spans);
      off = Math.max(off, distanceBetween(path, one));
      // One size that needs more spans decides for all; the others need not be tried, unless this is the last attempt.
      if (off > CURVE_MM && spans < SPANS.at(-1)!) break;
      fitted.push(one);
    }
    if (fitted.length < paths.length) continue;
    if (!best || off < best.off) best = { paths: fitted, off };
    if (off <= CURVE_MM) break;
  }
  return best!;
}

function chordOff(path: Path): number {
  const a = pathStart(path);
  const b = pathEnd(path);
  const chord = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return Math.max(
    0,
    ...path.map((p) => Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / chord),
  );
}

/** A ring that ends where it begins has no chord and is never straight. */
const isStraight = (path: Path): boolean =>
  chordOff(path) < STRAIGHT &&
  Math.hypot(pathEnd(path).x - pathStart(path).x, pathEnd(path).y - pathStart(path).y) > STRAIGHT;

/** Same number of cubics with joints at nearly the same shares, none of them crumbs. */
function alreadySame(paths: readonly Path[]): boolean {
  const n = cubicCount(paths[0]!);
  if (n > 6 || paths.some((path) => cubicCount(path) !== n)) return false;
  const shares = paths.map((path) => {
    const total = pathLength(path);
    let sum = 0;
    return Array.from({ length: n }, (_, i) => (sum += pathLength(path.slice(3 * i, 3 * i + 4)) / total));
  });
  return shares.every((own) =>
    own.every((share, i) => Math.abs(share - shares[0]![i]!) < 0.06 && share - (own[i - 1] ?? 0) > 0.02),
  );
}

function fitSpans(path: Path, spans: number): Path {
  const parts: Path[] = [];
  const all = pointsAtShares(
    path,
    Array.from({ length: spans * SAMPLES + 1 }, (_, i) => i / (spans * SAMPLES)),
  );
  for (let i = 0; i < spans; i++) {
    const points = all.slice(i * SAMPLES, (i + 1) * SAMPLES + 1);
    points[0] = i === 0 ? pathStart(path) : pathEnd(parts[i - 1]!);
    if (i === spans - 1) points[SAMPLES] = pathEnd(path);
    // A tolerance beyond reach keeps the fit to one cubic.
    parts.push(
      fitPath(points, Number.MAX_VALUE, {
        startTangent: direction(path, i / spans),
        endTangent: direction(path, (i + 1) / spans),
      }),
    );
  }
  return pathJoin(parts);
}

/** The run's direction at a share, over a millimetre, so that the joints of a flattened curve do not show. */
function direction(path: Path, share: number): Point {
  const reach = Math.min(0.02, 0.75 / Math.max(pathLength(path), 1));
  const from = Math.max(0, share - reach);
  const to = Math.min(1, share + reach);
  if (from > 0 && to < 1) {
    const exact = smoothTangent(path, share);
    if (exact) return exact;
  }
  const part = pathPart(path, from, to);
  const a = pathStart(part);
  const b = pathEnd(part);
  if (share <= 0) return placeTangent(path, { cubic: 0, t: 0 });
  if (share >= 1) return placeTangent(path, { cubic: cubicCount(path) - 1, t: 1 });
  return { x: b.x - a.x, y: b.y - a.y };
}

/** The exact tangent where the place lies well inside a cubic that is itself curved and long. */
function smoothTangent(path: Path, share: number): Point | null {
  const place = placeAtShare(path, share);
  const cubic = path.slice(3 * place.cubic, 3 * place.cubic + 4);
  if (place.t < 0.02 || place.t > 0.98 || isStraight(cubic) || pathLength(cubic) < 8) return null;
  return placeTangent(path, place);
}

/** Of something far larger than a piece only this share of its extent is told apart: it costs no more than a piece does. */
const FINEST = 2e-6;

/** Largest distance of samples of `a` from `b`, mm; `b` is taken as a polyline a tenth of the bound fine. */
function distanceBetween(a: Path, b: Path): number {
  const count = Math.max(16, 8 * cubicCount(b));
  const box = pointsBox(b);
  const extent = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const line = pathFlatten(b, Math.max(CURVE_MM / 10, FINEST * extent));
  const places = pointsAtShares(
    a,
    Array.from({ length: count - 1 }, (_, i) => (i + 1) / count),
  );
  return Math.max(0, ...places.map((point) => fromPolyline(point, line)));
}

function fromPolyline(point: Point, line: readonly Point[]): number {
  let least = Infinity;
  for (let i = 0; i + 1 < line.length; i++) {
    const p = line[i]!;
    const q = line[i + 1]!;
    const dx = q.x - p.x;
    const dy = q.y - p.y;
    const square = dx * dx + dy * dy;
    const t =
      square === 0 ? 0 : Math.min(1, Math.max(0, ((point.x - p.x) * dx + (point.y - p.y) * dy) / square));
    const ex = p.x + t * dx - point.x;
    const ey = p.y + t * dy - point.y;
    least = Math.min(least, ex * ex + ey * ey);
  }
  return Math.sqrt(least);
}
