import {
  bodyValue,
  byHeight,
  called,
  len,
  levelWord,
  MM_PER,
  t,
  garmentKind,
  type Finding,
  type MeasureId,
  type Phrase,
  type Plan,
  type Why,
} from '../garment/index.ts';
import { betweenAt, howCut, placeOfGirth, sizeLabel, tellSize } from './between.ts';
import { atIndex, cutSize, indexAlong, type CutSize } from './cut-size.ts';
import type { PlanInput } from './input.ts';
import { chartBody, filled, levelTable } from './level-table.ts';
import { leastEase } from './wearing-ease.ts';
import { fitFinding } from './words-table.ts';

/** Published rule where a chart has no upper bust: from 2 in of difference on, choose by the upper bust (Texas E-372, seen). mm */
const TWO_INCHES = 2 * MM_PER.in;

/** Girths repeat to this (docs/trade.md 1.2): a bust fuller by less says nothing. mm */
const TAPE_REPEATS = 10;

const FRAME_FITS = t`Neck, shoulder and armhole then fit; the bust is altered.`;

/** The size of neck, shoulder and armhole, and whether it was chosen by the upper bust: then the bust is cut at it too and altered. */
export interface Base {
  readonly plan: Plan['base'];
  /** Set when the upper-bust rule chose: how much fuller the bust is than the size chart's at that size, mm. */
  readonly fullerBy: number | null;
  readonly findings: readonly Finding[];
}

function placed(input: PlanInput, index: number, why: Why): Plan['base'] {
  const clamped = Math.min(input.chart.sizes.length - 1, Math.max(0, index));
  // Halfway counts as the smaller size.
  const whole = Math.ceil(clamped - 0.5);
  return { size: input.chart.sizes[whole]!.id, sizeIndex: clamped, why };
}

/** The rule to apply to the upper bust: which chart row it is compared with, and what a standard body's difference is. */
function upperBust(input: PlanInput, bust: number, bustRow: readonly number[]): UpperBust | null {
  const upper = bodyValue(input.body, 'upper-bust-girth');
  // The rule is of breasts: a man's and a child's chest chooses by itself.
  if (input.choices.upperBust === 'off' || upper === undefined || input.body.wearer !== 'woman') return null;
  const said = t`The bust (${len(bust)}) is ${len(bust - upper)} more than the upper bust (${len(upper)})`;
  const upperRow =
    input.choices.upperBust === 'chart-difference' ? filled(chartBody(input, 'upper-bust')) : null;
  const found =
    upperRow === null
      ? byTwoInches(input, { bust, upper, bustRow, said })
      : byChart(input, { bust, upper, bustRow, said, upperRow });
  // A bust that is no fuller than the size's, by what a tape repeats to, is no fuller bust.
  return found === null || found.excess <= TAPE_REPEATS ? null : found;
}

interface UpperBust {
  readonly index: CutSize;
  readonly excess: number;
  readonly why: Why;
}

interface Busts {
  readonly bust: number;
  readonly upper: number;
  readonly bustRow: readonly number[];
  readonly said: Phrase;
}

/** By the chart's own difference at the size this bust would take: it is not the same in every size. */
function byChart(
  input: PlanInput,
  { bust, upper, bustRow, said, upperRow }: Busts & { readonly upperRow: readonly number[] },
): UpperBust | null {
  const at = indexAlong(bustRow, bust);
  const allowed = atIndex(bustRow, at) - atIndex(upperRow, at);
  if (bust - upper - allowed <= TAPE_REPEATS) return null;
  const index = cutSize(upperRow, upper, howCut(input.choices, 'frame'));
  const size = tellSize(input, index, upperRow, betweenAt(input.choices, 'frame'));
  return {
    index,
    excess: bust - atIndex(bustRow, index.index),
    why: {
      sentence: t`${said}; the size chart allows ${len(allowed)} at size ${called(sizeLabel(input, at))}. So the upper bust chooses: ${len(upper)} is ${size}. ${FRAME_FITS}`,
      source: 'upper-bust rule with the size chart’s own difference',
    },
  };
}

/** By 2 in and more: the upper bust read as the chart's bust straight, or with the 2 in of the figure the charts were made for. */
function byTwoInches(input: PlanInput, { bust, upper, bustRow, said }: Busts): UpperBust | null {
  if (bust - upper < TWO_INCHES - 1e-6) return null;
  const straight = input.choices.upperBust === 'straight';
  const read = straight ? upper : upper + TWO_INCHES;
  const index = cutSize(bustRow, read, howCut(input.choices, 'frame'));
  const size = tellSize(input, index, bustRow, betweenAt(input.choices, 'frame'));
  const so = straight
    ? t`the upper bust is read as the chart's bust, and ${len(read)} is ${size}`
    : t`a bust of ${len(upper)} + ${len(TWO_INCHES)} = ${len(read)} is ${size}`;
  return {
    index,
    excess: bust - atIndex(bustRow, index.index),
    why: {
      sentence: t`${said}, and ${len(TWO_INCHES)} or more means choosing by the upper bust: ${so}. ${FRAME_FITS}`,
      source: 'Texas AgriLife Extension E-372 (2 in rule)',
    },
  };
}

/**
 * Trousers between two sizes take the one that fits the seat (US Army TM 10-227, seen): the smaller if it leaves the seat
 * its wearing ease, else the larger.
 */
function seatSize(input: PlanInput, found: CutSize, hip: number): CutSize {
  const { table } = levelTable(input, 'hip');
  if (
    !garmentKind(input.garment).legs ||
    found.how !== 'between' ||
    table === null ||
    input.cloth.kind === 'knit' ||
    input.choices.method === 'part'
  )
    return found;
  const least = leastEase('hip', input.garment) ?? 0;
  const [small, large] = found.between;
  return { ...found, index: table.finished[small]! - hip >= least - 1e-6 ? small : large };
}

function byGirth(input: PlanInput, id: MeasureId, row: readonly number[], value: number): Plan['base'] {
  const place = placeOfGirth(id);
  const plain = cutSize(row, value, howCut(input.choices, place));
  const found = id === 'hip-girth' ? seatSize(input, plain, value) : plain;
  const name = levelWord(id === 'hip-girth' ? 'hip' : id === 'waist-girth' ? 'waist' : 'bust');
  const seat = found !== plain && found.how === 'between';
  const words = seat
    ? t`between sizes ${called(sizeLabel(input, found.between[0]))} and ${called(sizeLabel(input, found.between[1]))}: ${called(sizeLabel(input, found.index))} is the one that fits the seat`
    : tellSize(input, found, row, betweenAt(input.choices, place));
  return placed(input, found.index, {
    sentence: t`By the ${name}: ${len(value)} is ${words}.`,
    source: seat ? 'US Army TM 10-227 (trousers by the seat)' : 'size by the girth that is hardest to alter',
  });
}

const LEVEL_OF: Readonly<Partial<Record<MeasureId, string>>> = {
  'hip-girth': 'hip',
  'waist-girth': 'waist',
  'bust-girth': 'bust',
  'upper-bust-girth': 'upper-bust',
};

function chosenBase(input: PlanInput): Plan['base'] | null {
  const id = input.choices.size['base'];
  const index = id === undefined ? -1 : input.chart.sizes.findIndex((s) => s.id === id);
  return index === -1
    ? null
    : placed(input, index, { sentence: t`Size ${called(sizeLabel(input, index))} was chosen by hand.` });
}

/** Children's sizes go by height where both the chart and the child have it (EN 13402 practice). */
function sizeByHeight(input: PlanInput): Plan['base'] | null {
  const height = bodyValue(input.body, 'stature');
  const row = input.chart.body.stature === undefined ? null : filled(input.chart.body.stature);
  if (input.body.wearer !== 'child' || height === undefined || row === null) return null;
  // A child outgrows: between two heights the one that is long enough, unless asked otherwise.
  const found = cutSize(row, height, howCut(input.choices, 'height'));
  return placed(input, found.index, {
    sentence: t`By height: ${len(height)} is ${tellSize(input, found, row, betweenAt(input.choices, 'height'))}.`,
    source: 'EN 13402 practice: children by height',
  });
}

/** The chart's body girths at a level; where it prints finished girths only, those less the ease that stands in. */
function bodyRow(input: PlanInput, level: string): readonly number[] | null {
  const printed = filled(chartBody(input, level));
  if (printed !== null) return printed;
  const { table } = levelTable(input, level);
  return table === null ? null : table.finished.map((f, i) => f - table.ease[i]!);
}

/**
 * The size of neck, shoulder and armhole. Tops: by the bust, or by the upper bust where a woman's full bust exceeds it by more than the
 * size chart allows; skirts and trousers by the hip; children by height. A size chosen by hand (`choices.size.base`) goes before all.
 */
export function baseSize(input: PlanInput): Base {
  const chosen = chosenBase(input) ?? sizeByHeight(input);
  if (chosen !== null) return { plan: chosen, fullerBy: null, findings: [] };
  const height = byHeight(input, input.body.wearer)
    ? [fitFinding('height-wanted', 'warning', { measure: 'stature' }, {})]
    : [];
  for (const id of garmentKind(input.garment).sizedBy) {
    const value = bodyValue(input.body, id);
    const row = bodyRow(input, LEVEL_OF[id]!);
    if (value === undefined || row === null) continue;
    const fuller = id === 'bust-girth' ? upperBust(input, value, row) : null;
    if (fuller === null) return { plan: byGirth(input, id, row, value), fullerBy: null, findings: height };
    const finding = fitFinding(
      'bust-fuller',
      'note',
      { level: 'bust', measure: 'bust-girth' },
      { excess: fuller.excess, size: sizeLabel(input, fuller.index.index) },
      { amount: fuller.excess },
    );
    return {
      plan: placed(input, fuller.index.index, fuller.why),
      fullerBy: fuller.excess,
      findings: [finding],
    };
  }
  const middle = Math.floor((input.chart.sizes.length - 1) / 2);
  const finding = fitFinding('base-unknown', 'error', {}, {});
  return {
    plan: placed(input, middle, {
      sentence: t`Nothing chooses a size; ${called(sizeLabel(input, middle))}, the middle of the chart, stands in.`,
    }),
    fullerBy: null,
    findings: [finding],
  };
}
