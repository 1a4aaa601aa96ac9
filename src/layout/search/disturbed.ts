import { onRail } from './rail.ts';
import type { Random } from './random.ts';
import type { Separation } from './separation.ts';
import type { Strip } from './strip.ts';

/** A layout about to be thrown out of its valley. */
export interface Disturbed {
  readonly strip: Strip;
  readonly sep: Separation;
  readonly random: Random;
  /** Items that may move; never none. */
  readonly free: readonly number[];
}

/** One way out. Changes `sep.places`; pairs must be measured anew after it. */
export type Way = (layout: Disturbed) => void;

/** Middle of item i's box. */
export function centre({ strip, sep }: Disturbed, i: number): [number, number] {
  const { box } = strip.forms[sep.places.form[i]!]!;
  return [sep.places.x[i]! + (box[0] + box[2]) / 2, sep.places.y[i]! + (box[1] + box[3]) / 2];
}

/** Puts the middle of item i's box there, or as near as the strip and its rails allow. */
export function moveCentre({ strip, sep }: Disturbed, i: number, cx: number, cy: number): void {
  const form = strip.forms[sep.places.form[i]!]!;
  const { box } = form;
  const x = onRail(form.railX, cx - (box[0] + box[2]) / 2, -box[0], sep.length() - box[2]);
  const y = onRail(form.railY, cy - (box[1] + box[3]) / 2, form.low, form.high);
  if (x === x) sep.places.x[i] = x;
  if (y === y) sep.places.y[i] = y;
}

/** Area of item i. */
export const areaOf = ({ strip }: Disturbed, i: number): number => strip.area[strip.itemShape[i]!]!;

/** One of the list. */
export const pick = (random: Random, from: readonly number[]): number => from[random.below(from.length)]!;
