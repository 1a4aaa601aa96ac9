import type { Body } from './body.ts';
import type { MeasureId } from './measure-id.ts';
import { MEASURE_TABLE, type Measure } from './measure-table.ts';
import type { Reading } from './body.ts';

/** Every measure by its id: names, how to take it, range. */
export const MEASURES: Readonly<Record<MeasureId, Measure>> = Object.fromEntries(
  MEASURE_TABLE.map((m) => [m.id, m]),
) as Record<MeasureId, Measure>;

/**
 * Repeat readings this close count as the same, mm: girths 10 (3/8 in), lengths 6 (1/4 in); beyond it a third is asked for.
 * Common practice (trade notes 1.2, memory). Degrees: the reading error of a hand level.
 */
export const REPEAT_WITHIN: Readonly<Record<Measure['kind'], number>> = { girth: 10, length: 6, angle: 3 };

/** Measurements older than this beside a newer one are history: extension bulletin E-372 asks to measure again every six months (seen). Days. */
const READING_LASTS = 183;
const DAY = 86_400_000;

/** Readings that still speak for the body: all undated ones, and the dated ones within six months of the newest. */
function current(readings: readonly Reading[]): readonly Reading[] {
  const newest = Math.max(
    ...readings.map((r) => (r.on === undefined ? Number.NEGATIVE_INFINITY : Date.parse(r.on))),
  );
  return readings.filter((r) => r.on === undefined || Date.parse(r.on) >= newest - READING_LASTS * DAY);
}

/** The largest set of readings that lie within `span` of one another; among equals the one that holds the newest. Indices into `readings`. */
function agreeing(readings: readonly Reading[], span: number): readonly Reading[] {
  let best: readonly Reading[] = [];
  let newest = -1;
  for (const low of readings) {
    const group = readings.filter((r) => r.value >= low.value && r.value - low.value <= span);
    const last = Math.max(...group.map((r) => readings.indexOf(r)));
    if (group.length > best.length || (group.length === best.length && last > newest)) {
      best = group;
      newest = last;
    }
  }
  return best;
}

/** What the readings of one measure come to. */
export interface Taken {
  /** mm (degrees for an angle). */
  readonly value: number;
  /** How many agreeing readings were averaged. */
  readonly from: number;
  /** `second`: a girth read once. `third`: two readings that differ too much (or three that all do); their mean stands in meanwhile. */
  readonly ask: 'second' | 'third' | null;
}

/** What readings of one side, or of no side said, come to. */
function takenOf(readings: readonly Reading[], kind: Measure['kind']): Taken {
  const mean = (group: readonly Reading[]): number =>
    group.reduce((sum, r) => sum + r.value, 0) / group.length;
  if (readings.length === 1)
    return { value: readings[0]!.value, from: 1, ask: kind === 'girth' ? 'second' : null };
  const group = agreeing(readings, REPEAT_WITHIN[kind]);
  if (group.length === 1) return { value: mean(readings), from: readings.length, ask: 'third' };
  return { value: mean(group), from: group.length, ask: null };
}

/**
 * The measure as it is used: the average of the readings that agree, and whether another is wanted.
 * Where both sides were taken, what they come to together is the mean of the two, of a limb's girth the larger, for a garment cut alike on
 * both sides has to go round it; a left and a right that differ are no doubt.
 * @param side one side only: its own readings, or where it has none those of which no side was said
 * Undefined when it was never taken.
 */
export function bodyReading(body: Body, id: MeasureId, side?: Reading['side']): Taken | undefined {
  const all = body.readings[id];
  if (all === undefined || all.length === 0)
    return id === 'shoulder-slope' ? slopeFromDrop(body, side) : undefined;
  const { kind } = MEASURES[id];
  const readings = current(all);
  const of = (which: Reading['side']): readonly Reading[] => readings.filter((r) => r.side === which);
  if (side !== undefined) {
    const own = of(side).length > 0 ? of(side) : of(undefined);
    return own.length > 0 ? takenOf(own, kind) : undefined;
  }
  if (of('left').length === 0 || of('right').length === 0) return takenOf(readings, kind);
  const [left, right] = [takenOf(of('left'), kind), takenOf(of('right'), kind)];
  return {
    value: kind === 'girth' ? Math.max(left.value, right.value) : (left.value + right.value) / 2,
    from: left.from + right.from,
    ask: left.ask ?? right.ask,
  };
}

/** The slope of a shoulder from its drop below the side of the neck and its length along it: the sine of the angle. */
function slopeFromDrop(body: Body, side?: Reading['side']): Taken | undefined {
  const drop = bodyReading(body, 'shoulder-drop', side);
  const along = bodyValue(body, 'shoulder-length', side);
  if (drop === undefined || along === undefined || drop.value >= along) return undefined;
  return { value: (Math.asin(drop.value / along) * 180) / Math.PI, from: drop.from, ask: null };
}

/** The value used for a measure, mm (degrees for shoulder-slope), or undefined when it was never taken. `side`: see `bodyReading`. */
export function bodyValue(body: Body, id: MeasureId, side?: Reading['side']): number | undefined {
  return bodyReading(body, id, side)?.value;
}
