import { cubicCount, cubicOf, placePoint, placeTangent } from '../../geometry/index.ts';
import type { Box } from '../../geometry/index.ts';
import { valueCrossings } from '../drawing/cut-to-box.ts';
import type { Stroke } from '../drawing/drawing.ts';
import { styleKey } from './window.ts';

export type Side = 'left' | 'right' | 'bottom' | 'top';

/** A line leaving the page over a side: where along the side (mm from the window's corner), how steeply, in what style. */
export interface Crossing {
  readonly at: number;
  /** Change of `at` per mm across the border. */
  readonly slope: number;
  readonly style: string;
}

/** A stroke with the box around its points, made once. */
export interface BoxedStroke {
  readonly stroke: Stroke;
  readonly box: Box;
  readonly style: string;
}

/** Looking this far inside the border still meets lines that a writer ended a hair before it. */
const INSIDE = 0.2;
/** Lines flatter to the border than this say nothing exact about where they cross. */
const STEEPEST = 12;

/**
 * Where the page's lines cross the border between it and its neighbour on that side. With an overlap the border is taken
 * in the middle of the strip that both pages show.
 */
export function crossings(
  strokes: readonly BoxedStroke[],
  window: Box,
  side: Side,
  overlap: number,
): Crossing[] {
  const upright = side === 'left' || side === 'right';
  const inset = Math.max(INSIDE, overlap / 2);
  const onward = inset - overlap / 2;
  const sign = side === 'left' || side === 'bottom' ? 1 : -1;
  const border = { left: window.minX, right: window.maxX, bottom: window.minY, top: window.maxY }[side];
  const value = border + sign * inset;
  const base = upright ? window.minY : window.minX;
  const found: Crossing[] = [];
  for (const { stroke, box, style } of strokes) {
    if (upright ? box.minX > value || box.maxX < value : box.minY > value || box.maxY < value) continue;
    const { path } = stroke;
    for (let i = 0; i < cubicCount(path); i++) {
      const along = cubicOf(path, i).map((p) => (upright ? p.x : p.y));
      for (const t of valueCrossings(along, value)) {
        const place = { cubic: i, t };
        const point = placePoint(path, place);
        const tangent = placeTangent(path, place);
        const slope = upright ? tangent.y / tangent.x : tangent.x / tangent.y;
        if (!(Math.abs(slope) < STEEPEST)) continue;
        found.push({ at: (upright ? point.y : point.x) - base - sign * slope * onward, slope, style });
      }
    }
  }
  return found.toSorted((a, b) => a.at - b.at);
}

export const boxed = (stroke: Stroke, box: Box): BoxedStroke => ({ stroke, box, style: styleKey(stroke) });

/** Two ends of one line meet within this, mm; a home printer is off by more, a file is not. */
const MEET = 0.35;
const SAME_SLOPE = 0.2;

/** A pair this far off counts half: exact files are off by thousandths, chance neighbours by tenths. */
const HALF = 0.03;

export interface Meeting {
  /** Lines that go on. */
  readonly count: number;
  /** The same, each the less the further its two ends are apart. */
  readonly exact: number;
  /** Sums of slope × offset and slope²: their quotient says how far the pages should move towards one another. */
  readonly pull: number;
  readonly grip: number;
}

/** How many of the lines over the border go on on the other page: each is used once. Both lists are sorted. */
export function meet(a: readonly Crossing[], b: readonly Crossing[]): Meeting {
  let count = 0;
  let exact = 0;
  let pull = 0;
  let grip = 0;
  let from = 0;
  const used = new Set<number>();
  for (const one of a) {
    while (from < b.length && b[from]!.at < one.at - MEET) from++;
    let best = -1;
    for (let k = from; k < b.length && b[k]!.at <= one.at + MEET; k++) {
      const two = b[k]!;
      if (used.has(k) || two.style !== one.style) continue;
      if (Math.abs(Math.atan(two.slope) - Math.atan(one.slope)) > SAME_SLOPE) continue;
      if (best < 0 || Math.abs(two.at - one.at) < Math.abs(b[best]!.at - one.at)) best = k;
    }
    if (best < 0) continue;
    used.add(best);
    count++;
    const off = b[best]!.at - one.at;
    exact += 1 / (1 + (off / HALF) ** 2);
    pull += one.slope * off;
    grip += one.slope * one.slope;
  }
  return { count, exact, pull, grip };
}

/** Only the count: how many lines go on. */
export const matched = (a: readonly Crossing[], b: readonly Crossing[]): number =>
  a.length === 0 || b.length === 0 ? 0 : meet(a, b).count;
