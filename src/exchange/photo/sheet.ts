import { REFUSAL_WORDS as NO } from '../words/refusal-table.ts';
import { add, cross, distance, scale, sub, type Point } from '../../geometry/index.ts';
import { greyAt, type Grey } from './image.ts';
import { PhotoError, pictureRound, throughLens, withoutLens, type Lens } from './camera.ts';

/** Threshold between dark and light by Otsu's method (IEEE Trans. SMC 9, 1979): most variance between the two. */
function lightThreshold(image: Grey): number {
  const counts = new Float64Array(256);
  for (const v of image.data) counts[Math.min(255, Math.max(0, Math.round(v)))]!++;
  const all = image.data.length;
  let sum = 0;
  counts.forEach((n, v) => (sum += n * v));
  let below = 0;
  let belowSum = 0;
  let best = 127;
  let most = -1;
  for (let v = 0; v < 255; v++) {
    below += counts[v]!;
    belowSum += counts[v]! * v;
    if (below === 0 || below === all) continue;
    const gap = belowSum / below - (sum - belowSum) / (all - below);
    const between = below * (all - below) * gap * gap;
    if (between > most) {
      most = between;
      best = v;
    }
  }
  return best + 0.5;
}

/** Pixels of the largest light patch. */
function largestPatch(image: Grey, threshold: number): Int32Array {
  const { width, height, data } = image;
  const seen = new Uint8Array(width * height);
  const stack = new Int32Array(width * height);
  let best = new Int32Array(0);
  for (let start = 0; start < seen.length; start++) {
    if (seen[start] || data[start]! <= threshold) continue;
    let top = 0;
    let count = 0;
    const list: number[] = [];
    stack[top++] = start;
    seen[start] = 1;
    while (top > 0) {
      const at = stack[--top]!;
      list.push(at);
      count++;
      const x = at % width;
      for (const next of [x > 0 ? at - 1 : -1, x < width - 1 ? at + 1 : -1, at - width, at + width]) {
        if (next < 0 || next >= seen.length || seen[next] || data[next]! <= threshold) continue;
        seen[next] = 1;
        stack[top++] = next;
      }
    }
    if (count > best.length) best = Int32Array.from(list);
  }
  return best;
}

/** Rim of the light area along a side, to a part of a pixel: where the grey crosses the threshold across the side. */
function rim(image: Grey, a: Point, b: Point, threshold: number): Point[] {
  const length = distance(a, b);
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const across = { x: -along.y, y: along.x };
  const found: Point[] = [];
  const reach = Math.max(6, length * 0.02);
  for (let k = 1; k < 40; k++) {
    const t = (0.06 + (0.88 * k) / 40) * length;
    const base = { x: a.x + along.x * t, y: a.y + along.y * t };
    let last = greyAt(image, base.x - across.x * reach, base.y - across.y * reach);
    for (let s = -reach + 0.5; s <= reach; s += 0.5) {
      const here = greyAt(image, base.x + across.x * s, base.y + across.y * s);
      if (last > threshold !== here > threshold) {
        const f = s - 0.5 + (0.5 * (threshold - last)) / (here - last);
        found.push({ x: base.x + across.x * f, y: base.y + across.y * f });
        break;
      }
      last = here;
    }
  }
  return found;
}

interface Line {
  readonly at: Point;
  readonly along: Point;
  /** Squares of what the points leave it by, as a share of those of how far they reach. */
  readonly bend: number;
}

function fitLine(points: readonly Point[]): Line {
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
  const root = Math.hypot((xx - yy) / 2, xy);
  const least = Math.max(0, (xx + yy) / 2 - root);
  return { at, along: { x: Math.cos(angle), y: Math.sin(angle) }, bend: least / (xx + yy) };
}

const meet = (a: Line, b: Line): Point =>
  add(a.at, scale(a.along, cross(sub(b.at, a.at), b.along) / cross(a.along, b.along)));

/** Lenses of hand-held cameras bend less than this (memory). */
const MOST_LENS = 0.4;

/** The lens that leaves the sides of the sheet the straightest (plumb-line method, Brown 1971), by golden section. */
function lensOf(image: Grey, sides: readonly (readonly Point[])[]): Lens {
  const round = pictureRound(image.width, image.height);
  const bend = (lens: number): number =>
    sides.reduce((sum, side) => sum + fitLine(side.map((p) => withoutLens({ ...round, lens }, p))).bend, 0);
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [-MOST_LENS, MOST_LENS];
  while (high - low > 1e-6) {
    const [a, b] = [high - golden * (high - low), low + golden * (high - low)];
    if (bend(a) < bend(b)) high = b;
    else low = a;
  }
  return { ...round, lens: (low + high) / 2 };
}

/** A light sheet found on a darker ground: its corners and points along its four sides, px. */
export interface FoundSheet {
  /** In order round the sheet, from the one nearest the top left of the photo. */
  readonly corners: readonly [Point, Point, Point, Point];
  /** For each side (corner i to i + 1) places on its rim. */
  readonly sides: readonly (readonly Point[])[];
}

/** Finds the largest light four-cornered sheet. Throws PhotoError where there is none. */
export function findSheet(image: Grey): FoundSheet {
  const threshold = lightThreshold(image);
  const patch = largestPatch(image, threshold);
  if (patch.length < 0.03 * image.width * image.height) {
    throw new PhotoError(NO['no-sheet']());
  }
  const extreme = (score: (x: number, y: number) => number): Point => {
    let best = patch[0]!;
    let most = -Infinity;
    for (const at of patch) {
      const value = score(at % image.width, Math.floor(at / image.width));
      if (value > most) {
        most = value;
        best = at;
      }
    }
    return { x: best % image.width, y: Math.floor(best / image.width) };
  };
  const rough = [
    extreme((x, y) => -x - y),
    extreme((x, y) => x - y),
    extreme((x, y) => x + y),
    extreme((x, y) => y - x),
  ];
  const sides = rough.map((a, i) => rim(image, a, rough[(i + 1) % 4]!, threshold));
  if (sides.some((s) => s.length < 10)) {
    throw new PhotoError(NO['sheet-crooked']());
  }
  // A lens bends the sides: where they meet is sought with that taken out.
  const lens = lensOf(image, sides);
  const lines = sides.map((side) => fitLine(side.map((p) => withoutLens(lens, p))));
  const corners = lines.map((line, i) => throughLens(lens, meet(lines[(i + 3) % 4]!, line)));
  return { corners: corners as [Point, Point, Point, Point], sides };
}
