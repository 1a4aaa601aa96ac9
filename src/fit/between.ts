import {
  called,
  len,
  percent,
  t,
  type Level,
  type MeasureId,
  type Phrase,
  type PlanChoices,
} from '../garment/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';
import type { CutSize, HowCut } from './cut-size.ts';
import type { PlanInput } from './input.ts';

/** What is decided: the frame (neck, shoulder, armhole and the bust under them), a width that can be pinned in or out, or a child's height. */
export type Place = 'frame' | 'width' | 'height';

/** So near to a size, a measure is that size: a quarter of the way to the next, */
const QUARTER = 1 / 4;
/** but at most this, all round: about what repeated girths differ by (docs/trade.md 1.2: 1 cm). mm */
const MOST_NEAR = 12;
/** A child outgrows: only so much over a size's height is still that size (heights repeat to about as much; our own bound). mm */
const HEIGHT_NEAR = 5;

/** Which of two sizes is taken, and why. */
export interface Between {
  readonly take: NonNullable<PlanChoices['between']>;
  readonly because: Place | 'asked' | 'stuck';
}

const USUAL: Readonly<Record<Place, Between>> = {
  frame: { take: 'smaller', because: 'frame' },
  width: { take: 'nearest', because: 'width' },
  height: { take: 'larger', because: 'height' },
};

/** The rule between two sizes: what was asked for, else the usual one of the place. @param stuck no seam may move there */
export function betweenAt(choices: PlanChoices, place: Place, stuck = false): Between {
  const asked = choices.between;
  // What no seam can add must be cut.
  if (stuck && (asked ?? 'smaller') === 'smaller') return { take: 'larger', because: 'stuck' };
  return asked === undefined ? USUAL[place] : { take: asked, because: 'asked' };
}

const quarter = (step: number): number => Math.max(FINISHED_MM, Math.min(step * QUARTER, MOST_NEAR));

/** How a size is found there. */
export function howCut(choices: PlanChoices, place: Place, between = betweenAt(choices, place)): HowCut {
  const most = between.because === 'stuck' ? FINISHED_MM : HEIGHT_NEAR;
  const near = place === 'height' || between.because === 'stuck' ? (): number => most : quarter;
  return { take: between.take, method: choices.method, near };
}

const FRAME_LEVELS = new Set<Level>(['neck', 'upper-bust', 'bust', 'upper-arm']);
/** A level of the frame goes with neck, shoulder and armhole; the others are widths. */
export const placeOf = (level: Level): Place => (FRAME_LEVELS.has(level) ? 'frame' : 'width');
/** The girth that chooses the size of the whole: hip and waist have no armhole to spoil. */
export const placeOfGirth = (id: MeasureId): Place =>
  id === 'hip-girth' || id === 'waist-girth' ? 'width' : 'frame';

const TAKE: Readonly<Record<Between['take'], Phrase>> = {
  nearest: t`the nearer (halfway, the smaller)`,
  smaller: t`the smaller`,
  larger: t`the larger`,
};

const BECAUSE: Readonly<Record<Between['because'], Phrase>> = {
  frame: t`what it lacks is added at the seams, while too much is hard to take from a neckline or an armhole`,
  width: t`width is pinned in or out at a trial`,
  height: t`a child grows into it`,
  asked: t`as was asked for`,
  stuck: t`no seam may move there, and cloth can be taken in but not added`,
};

/** A size as it is named in the chart. */
export const sizeLabel = (input: PlanInput, index: number): string =>
  input.chart.sizes[Math.min(input.chart.sizes.length - 1, Math.max(0, Math.round(index)))]!.id;

/** How the size came out, in words: `between sizes 14 (36 in) and 16 (38 in): the smaller, 14, is taken, for …`. */
export function tellSize(input: PlanInput, found: CutSize, row: readonly number[], between: Between): Phrase {
  const size = (i: number): Phrase => t`${called(sizeLabel(input, i))} (${len(row[i]!)})`;
  const chosen = called(sizeLabel(input, found.index));
  if (found.how === 'exact') return t`size ${chosen}`;
  if (found.how === 'near') {
    const within =
      between.because === 'height'
        ? t`within ${len(HEIGHT_NEAR)}`
        : t`within a quarter of the way to the next, at most ${len(MOST_NEAR)}`;
    return t`${len(Math.abs(found.off))} ${found.off > 0 ? t`over` : t`under`} size ${size(found.index)}: so near it is that size (${within})`;
  }
  if (found.how !== 'between')
    return found.how === 'below'
      ? t`smaller than the smallest size ${size(found.index)}`
      : t`larger than the largest size ${size(found.index)}`;
  const [a, b] = found.between;
  if (!Number.isInteger(found.index))
    return t`${percent(found.index - a)} of the way from size ${size(a)} to ${size(b)}`;
  const why = between.because === 'asked' ? t`, ${BECAUSE.asked}` : t`, for ${BECAUSE[between.because]}`;
  return t`between sizes ${size(a)} and ${size(b)}: ${TAKE[between.take]} is taken, ${chosen}${why}`;
}
