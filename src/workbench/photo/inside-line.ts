import type { Click, Traced } from '../../exchange/index.ts';
import { LEVELS, levelName } from '../../garment/index.ts';
import {
  add,
  distance,
  lerp,
  nearestPlace,
  scale,
  shareAtPlace,
  sub,
  type Point,
} from '../../geometry/index.ts';

/** A straight line inside a piece, from end to end as a hand set them, mm on the flat picture. */
export interface InsideLine {
  /** A level of the body, or one of `OTHERS`. */
  readonly means: string;
  readonly ends: readonly [Point, Point];
}

const OTHERS: Readonly<Record<string, string>> = {
  grain: 'grainline',
  adjust: 'lengthen-or-shorten line',
  notch: 'notch',
};

/** What a line inside a piece may be: the levels at which girths are measured first. */
export const LINE_MEANINGS: readonly string[] = [
  ...LEVELS.filter(({ girth }) => girth !== undefined).map(({ level }) => level),
  ...Object.keys(OTHERS),
];

export const lineName = (means: string): string => OTHERS[means] ?? `${levelName(means)} line`;

/** An end this near to the outline goes with it from size to size, mm. */
const ON_OUTLINE_MM = 15;

/** The line as it is thought to lie in the next size: an end on the outline moves as the corners beside it do, any other stays. */
export function carried(
  line: InsideLine,
  runs: readonly Traced[],
  before: readonly Click[],
  after: readonly Click[],
): InsideLine {
  const moved = (end: Point): Point => {
    const near = runs
      .map((run, i) => ({ i, run, ...nearestPlace(run.path, end) }))
      .toSorted((a, b) => a.distance - b.distance)[0];
    if (!near || near.distance > ON_OUTLINE_MM) return end;
    const next = (near.i + 1) % before.length;
    const by = (i: number): Point => sub(after[i]!.at, before[i]!.at);
    return add(end, lerp(by(near.i), by(next), shareAtPlace(near.run.path, near.place)));
  };
  return { ...line, ends: [moved(line.ends[0]), moved(line.ends[1])] };
}

/** A notch is drawn so long, mm. */
const NOTCH_MM = 5;
/** The foot of a notch is sought so near, mm. */
const FOOT_MM = 8;

/** The line as it is drawn: a notch short and with its foot on the outline, any other from end to end. */
export function drawnEnds(
  { means, ends: [from, to] }: InsideLine,
  runs: readonly Traced[],
): readonly [Point, Point] {
  if (means !== 'notch') return [from, to];
  const feet = runs.map(({ path }) => nearestPlace(path, from)).toSorted((a, b) => a.distance - b.distance);
  const foot = feet[0] && feet[0].distance < FOOT_MM ? feet[0].point : from;
  const long = distance(from, to) || 1;
  return [foot, add(foot, scale(sub(to, from), NOTCH_MM / long))];
}
