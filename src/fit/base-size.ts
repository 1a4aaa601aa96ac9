import {
  bodyValue,
  called,
  len,
  levelWord,
  MM_PER,
  percent,
  t,
  garmentKind,
  type Finding,
  type MeasureId,
  type Phrase,
  type Plan,
  type Why,
} from '../garment/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';
import { atIndex, cutSize, type CutSize } from './cut-size.ts';
import type { PlanInput } from './input.ts';
import { chartBody, filled, levelTable } from './level-table.ts';
import { leastEase } from './wearing-ease.ts';
import { fitFinding } from './words-table.ts';

/** Published rule where a chart has no upper bust: from 2 in of difference on, choose by the upper bust (Texas E-372, seen). mm */
const TWO_INCHES = 2 * MM_PER.in;

/** The size of neck, shoulder and armhole, and whether it was chosen by the upper bust: then the bust is cut at it too and altered. */
export interface Base {
  readonly plan: Plan['base'];
  /** Set when the upper-bust rule chose: how much fuller the bust is than the size chart's at that size, mm. */
  readonly fullerBy: number | null;
  readonly findings: readonly Finding[];
}

/** A size as it is named in the chart. */
const label = (input: PlanInput, index: number): string =>
  input.chart.sizes[Math.min(input.chart.sizes.length - 1, Math.max(0, Math.round(index)))]!.id;

function placed(input: PlanInput, index: number, why: Why): Plan['base'] {
  const clamped = Math.min(input.chart.sizes.length - 1, Math.max(0, index));
  // Halfway counts as the smaller size.
  const whole = Math.ceil(clamped - 0.5);
  return { size: input.chart.sizes[whole]!.id, sizeIndex: clamped, why };
}

/** How the size came out, in words. */
export function tellSize(
  input: PlanInput,
  found: CutSize,
  row: readonly number[],
  between = input.choices.between,
): Phrase {
  const size = (i: number): Phrase => t`${called(label(input, i))} (${len(row[i]!)})`;
  const chosen = called(label(input, found.index));
  if (found.how === 'exact') return t`size ${chosen}`;
  if (found.how === 'below') return t`smaller than the smallest size ${size(found.index)}`;
  if (found.how === 'above') return t`larger than the largest size ${size(found.index)}`;
  const [a, b] = found.between!;
  if (!Number.isInteger(found.index))
    return t`${percent(found.index - a)} of the way from size ${size(a)} to ${size(b)}`;
  return t`between sizes ${size(a)} and ${size(b)}: ${RULES[between]} is taken, ${chosen}`;
}

const RULES: Readonly<Record<PlanInput['choices']['between'], Phrase>> = {
  nearest: t`the nearer (halfway, the smaller)`,
  smaller: t`the smaller`,
  larger: t`the larger`,
};

/** The rule to apply to the upper bust: which chart row it is compared with, and what a standard body's difference is. */
function upperBust(
  input: PlanInput,
  bust: number,
  bustRow: readonly number[],
): { index: CutSize; excess: number; why: Why } | null {
  const upper = bodyValue(input.body, 'upper-bust-girth');
  if (input.choices.upperBust === 'off' || upper === undefined) return null;
  const difference = bust - upper;
  const upperRow =
    input.choices.upperBust === 'chart-difference' ? filled(chartBody(input, 'upper-bust')) : null;
  const said = t`The bust (${len(bust)}) is ${len(difference)} more than the upper bust (${len(upper)})`;
  if (upperRow !== null) {
    // The chart's own difference at the size this bust would take: it is not the same in every size.
    const at = cutSize(bustRow, bust, { between: 'smaller', method: 'part' }).index;
    const allowed = atIndex(bustRow, at) - atIndex(upperRow, at);
    if (difference - allowed <= FINISHED_MM) return null;
    const index = cutSize(upperRow, upper, input.choices);
    const sentence = t`${said}; the size chart allows ${len(allowed)} at size ${called(label(input, at))}. So the upper bust chooses: ${len(upper)} is ${tellSize(input, index, upperRow)}. Neck, shoulder and armhole then fit; the bust is altered.`;
    return {
      index,
      excess: bust - atIndex(bustRow, index.index),
      why: { sentence, source: 'upper-bust rule with the size chart’s own difference' },
    };
  }
  if (difference < TWO_INCHES - 1e-6) return null;
  const index = cutSize(bustRow, upper + TWO_INCHES, input.choices);
  const sentence = t`${said}, and ${len(TWO_INCHES)} or more means choosing by the upper bust: a bust of ${len(upper)} + ${len(TWO_INCHES)} = ${len(upper + TWO_INCHES)} is ${tellSize(input, index, bustRow)}. Neck, shoulder and armhole then fit; the bust is altered.`;
  return {
    index,
    excess: bust - atIndex(bustRow, index.index),
    why: { sentence, source: 'Texas AgriLife Extension E-372 (2 in rule)' },
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
    found.between === undefined ||
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
  const plain = cutSize(row, value, input.choices);
  const found = id === 'hip-girth' ? seatSize(input, plain, value) : plain;
  const name = levelWord(id === 'hip-girth' ? 'hip' : id === 'waist-girth' ? 'waist' : 'bust');
  const seat = found !== plain && found.between !== undefined;
  const words = seat
    ? t`between sizes ${called(label(input, found.between[0]))} and ${called(label(input, found.between[1]))}: ${called(label(input, found.index))} is the one that fits the seat`
    : tellSize(input, found, row);
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
    : placed(input, index, { sentence: t`Size ${called(label(input, index))} was chosen by hand.` });
}

/** Children's sizes go by height where both the chart and the child have it (EN 13402 practice). */
function byHeight(input: PlanInput): Plan['base'] | null {
  const height = bodyValue(input.body, 'stature');
  const row = input.chart.body.stature === undefined ? null : filled(input.chart.body.stature);
  if (input.body.wearer !== 'child' || height === undefined || row === null) return null;
  // A child outgrows: between two heights the one that is long enough, unless chosen otherwise.
  const found = cutSize(row, height, input.choices);
  return placed(input, found.index, {
    sentence: t`By height: ${len(height)} is ${tellSize(input, found, row)}.`,
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
 * The size of neck, shoulder and armhole. Tops: by the bust, or by the upper bust where the full bust exceeds it by more than the size
 * chart allows; skirts and trousers by the hip; children by height. A size chosen by hand (`choices.size.base`) goes before all.
 */
export function baseSize(input: PlanInput): Base {
  const chosen = chosenBase(input) ?? byHeight(input);
  if (chosen !== null) return { plan: chosen, fullerBy: null, findings: [] };
  for (const id of garmentKind(input.garment).sizedBy) {
    const value = bodyValue(input.body, id);
    const row = bodyRow(input, LEVEL_OF[id]!);
    if (value === undefined || row === null) continue;
    const fuller = id === 'bust-girth' ? upperBust(input, value, row) : null;
    if (fuller === null) return { plan: byGirth(input, id, row, value), fullerBy: null, findings: [] };
    const finding = fitFinding(
      'bust-fuller',
      'note',
      { level: 'bust', measure: 'bust-girth' },
      { excess: fuller.excess, size: label(input, fuller.index.index) },
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
      sentence: t`Nothing chooses a size; ${called(label(input, middle))}, the middle of the chart, stands in.`,
    }),
    fullerBy: null,
    findings: [finding],
  };
}
