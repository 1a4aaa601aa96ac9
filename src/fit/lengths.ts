import {
  bodyValue,
  MEASURES,
  MEASURE_IDS,
  MM_PER,
  capital,
  len,
  measureWord,
  t,
  garmentKind,
  type Finding,
  type LengthPlan,
  type MeasureId,
} from '../garment/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';
import { atIndex } from './cut-size.ts';
import { CROTCH_DEPTH_EASE, LENGTH_EASE } from './ease-table.ts';
import type { PlanInput } from './input.ts';
import { filled } from './level-table.ts';
import { fitFinding, plus } from './words-table.ts';

/** Of the body alone: they say how tall it is and how its shoulders slope. */
const NO_GARMENT_LENGTH: ReadonlySet<MeasureId> = new Set(['stature', 'shoulder-drop']);

/** Lengths and widths a pattern is compared with; height and angles are not lengths of a garment. */
function compared(): readonly MeasureId[] {
  return MEASURE_IDS.filter((id) => MEASURES[id].kind === 'length' && !NO_GARMENT_LENGTH.has(id));
}

/** Taken to the floor, while a pattern's own ends at its hem. */
const TO_THE_FLOOR: readonly MeasureId[] = ['inside-leg-length', 'outside-leg-length'];

/** Whether the pattern gives a leg to its hem and not the leg it is meant for: how far above the floor it ends is then known to nobody. */
const endsUnknown = ({ chart }: PlanInput, id: MeasureId): boolean =>
  TO_THE_FLOOR.includes(id) && chart.body[id] === undefined;

/** Published ease in a length, mm, with its source; used only where the pattern does not print both body and finished length. */
function lengthEase(input: PlanInput, id: MeasureId): { ease: number; source: string | null } {
  if (id === 'crotch-depth') {
    const hip = (bodyValue(input.body, 'hip-girth') ?? 0) / MM_PER.in;
    const { smallHip, largeHip, small, between, large, source } = CROTCH_DEPTH_EASE;
    return { ease: (hip < smallHip ? small : hip > largeHip ? large : between) * MM_PER.in, source };
  }
  const row = LENGTH_EASE.find((r) => r.measure === id);
  return row === undefined ? { ease: 0, source: null } : { ease: row.least * MM_PER.in, source: row.source };
}

/** One length at the base size: ease is the pattern's own where it prints both, else published. */
function lengthPlan(input: PlanInput, id: MeasureId, index: number): LengthPlan | null {
  const body = bodyValue(input.body, id);
  const at = (row: readonly (number | null)[] | undefined): number | null => {
    const full = row === undefined ? null : filled(row);
    return full === null ? null : atIndex(full, index);
  };
  const finished = at(input.chart.finishedLengths[id]);
  const chart = at(input.chart.body[id]);
  if (body === undefined || (finished === null && chart === null) || endsUnknown(input, id)) return null;
  const published = lengthEase(input, id);
  const own = finished !== null && chart !== null;
  const ease = own ? finished - chart : published.ease;
  const pattern = finished ?? chart! + ease;
  const residual = body + ease - pattern;
  const verb =
    Math.abs(residual) < 0.05
      ? t`nothing to do`
      : t`${residual > 0 ? t`lengthen` : t`shorten`} by ${len(Math.abs(residual))}`;
  const whose = own ? t`the pattern's own ease` : published.source === null ? t`no ease` : t`published ease`;
  const sentence = t`${capital(t`${measureWord(id)}`)}: body ${len(body)} ${plus(ease)} (${whose}) = ${len(body + ease)}; the pattern has ${len(pattern)}: ${verb}.`;
  return {
    measure: id,
    body,
    pattern,
    ease,
    residual,
    why: {
      sentence,
      ...(own || published.source === null ? {} : { source: published.source }),
    },
  };
}

/** Front and back waist change by different amounts: the side seams then end at different heights. */
function sidesDiffer(plans: readonly LengthPlan[]): Finding | null {
  const of = (id: MeasureId): LengthPlan | undefined => plans.find((p) => p.measure === id);
  const front = of('front-waist-length') ?? of('centre-front-length');
  const back = of('back-waist-length');
  if (front === undefined || back === undefined) return null;
  const off = front.residual - back.residual;
  if (Math.abs(off) <= FINISHED_MM) return null;
  return fitFinding(
    'front-back-length',
    'note',
    { level: 'waist', measure: 'front-waist-length' },
    { off },
    { amount: off },
  );
}

/** The length that decides whether a garment's waist sits where the body's is. */
function askFor(input: PlanInput): Finding | null {
  const id = garmentKind(input.garment).hungBy;
  const inChart = input.chart.body[id] !== undefined || input.chart.finishedLengths[id] !== undefined;
  if (!inChart || bodyValue(input.body, id) !== undefined) return null;
  return fitFinding('length-missing', 'note', { measure: id }, { measure: id });
}

/** Legs that are not compared, because the one ends at the floor and the other at a hem. */
const legsApart = (input: PlanInput): readonly Finding[] =>
  TO_THE_FLOOR.filter(
    (id) =>
      endsUnknown(input, id) &&
      input.chart.finishedLengths[id] !== undefined &&
      bodyValue(input.body, id) !== undefined,
  ).map((id) => fitFinding('floor-and-hem', 'note', { measure: id }, { measure: id }));

/**
 * Every length that both the body and the pattern have, compared from the same points at the base size:
 * residual = body + ease − pattern; lengthen when positive.
 */
export function planLengths(
  input: PlanInput,
  index: number,
): { readonly lengths: readonly LengthPlan[]; readonly findings: readonly Finding[] } {
  const lengths = compared()
    .map((id) => lengthPlan(input, id, index))
    .filter((p) => p !== null);
  return {
    lengths,
    findings: [...[sidesDiffer(lengths), askFor(input)].filter((f) => f !== null), ...legsApart(input)],
  };
}
