import type { Body } from './body.ts';
import { MEASURES, bodyReading, bodyValue, REPEAT_WITHIN } from './measure.ts';
import { MEASURE_IDS, type MeasureId } from './measure-id.ts';
import type { Question } from './question.ts';
import { MM_PER } from '../words/length-unit.ts';
import { t } from '../words/phrase.ts';
import { meantIn, question } from './question-table.ts';

/** Factors by which a slip of unit or of the decimal mark changes a length, with the unit that was probably meant. */
const SLIPS: readonly { readonly factor: number; readonly unit: 'in' | 'cm' | 'mm' }[] = [
  { factor: MM_PER.in / MM_PER.cm, unit: 'in' },
  { factor: MM_PER.cm / MM_PER.in, unit: 'cm' },
  { factor: MM_PER.in, unit: 'in' },
  { factor: 1 / MM_PER.in, unit: 'mm' },
  { factor: MM_PER.cm, unit: 'cm' },
  { factor: 1 / MM_PER.cm, unit: 'mm' },
];

/**
 * Looks at one entry by itself: a bust of 40 cm is asked about (inches?), not taken silently.
 * @param mm the entry in mm (degrees for shoulder-slope)
 * @returns a question, or null when the entry is within the wearer's range
 */
export function doubtEntry(id: MeasureId, mm: number, wearer: Body['wearer']): Question | null {
  const { range, kind } = MEASURES[id];
  const [least, most] = range[wearer];
  if (mm >= least && mm <= most) return null;
  const of = { measure: id, value: mm };
  if (kind === 'angle') return question('out-of-range', id, { ...of, least, most });
  const slip = SLIPS.map((s) => ({ value: mm * s.factor, unit: s.unit })).find(
    (s) => s.value >= least && s.value <= most,
  );
  if (slip === undefined) return question('out-of-range', id, { ...of, least, most });
  const meant = meantIn(slip.value, slip.unit);
  return question(
    'unit-doubtful',
    id,
    { ...of, meant, beside: 'anyone' },
    { suggest: { value: slip.value, say: meant } },
  );
}

/**
 * Pairs in which the first is rarely larger than the second, and by how much it may be, as a share of the second.
 * The waist limit is the highest waist-to-hip ratio seen in open survey data (ANSUR 1988 men, 99th percentile 0.96) with room above it.
 */
const ORDER: readonly {
  readonly small: MeasureId;
  readonly large: MeasureId;
  readonly room: number;
  readonly adultsOnly: boolean;
}[] = [
  { small: 'waist-girth', large: 'hip-girth', room: 0.12, adultsOnly: true },
  { small: 'waist-girth', large: 'bust-girth', room: 0.15, adultsOnly: true },
  { small: 'under-bust-girth', large: 'bust-girth', room: 0.02, adultsOnly: false },
  { small: 'wrist-girth', large: 'upper-arm-girth', room: 0, adultsOnly: false },
  { small: 'shoulder-length', large: 'shoulder-width', room: -0.45, adultsOnly: false },
  { small: 'high-hip-depth', large: 'hip-depth', room: 0, adultsOnly: false },
  { small: 'back-waist-length', large: 'stature', room: -0.65, adultsOnly: false },
  { small: 'bust-spread', large: 'front-bust-arc', room: 0, adultsOnly: false },
  { small: 'inside-leg-length', large: 'outside-leg-length', room: 0, adultsOnly: false },
];

function doubtPair(body: Body, pair: (typeof ORDER)[number]): Question | null {
  const small = bodyValue(body, pair.small);
  const large = bodyValue(body, pair.large);
  if (small === undefined || large === undefined || small <= large * (1 + pair.room)) return null;
  if (pair.adultsOnly && body.wearer === 'child') return null;
  const values = { measure: pair.small, value: small, other: { measure: pair.large, value: large } };
  if (small <= large) return question('pair-unusual', pair.small, values, { other: pair.large });
  return question(
    'swapped',
    pair.small,
    { ...values, beside: 'anyone' },
    { other: pair.large, suggest: { value: large, say: t`exchange them` } },
  );
}

/** Front and back crotch length make up the whole, within what two readings and a third differ by. */
function doubtParts(body: Body): Question | null {
  const [front, back, whole] = (['crotch-length-front', 'crotch-length-back', 'crotch-length'] as const).map(
    (id) => bodyValue(body, id),
  );
  if (front === undefined || back === undefined || whole === undefined) return null;
  if (Math.abs(front + back - whole) <= 2 * REPEAT_WITHIN.length) return null;
  return question('parts-apart', 'crotch-length', { front, back, whole });
}

/** Asks for another reading: a second of the girths that decide the size (statistics are blind to 25 mm there), a third where two differ. */
function doubtReading(body: Body, id: MeasureId): Question | null {
  const taken = bodyReading(body, id);
  if (taken === undefined || taken.ask === null) return null;
  if (taken.ask === 'second') return question('second-reading', id, { measures: [id] });
  return question('third-reading', id, { measure: id, within: REPEAT_WITHIN[MEASURES[id].kind] });
}

/** Whether a doubt was answered with “it is right”: of every reading that it speaks of, as it stands last. */
export const isAnswered = (body: Body, { measure, other }: Question): boolean =>
  [measure, ...(other === undefined ? [] : [other])].every((id) => body.readings[id]?.at(-1)?.sure === true);

/** Everything doubtful about a body's entries taken by themselves and in pairs; see `plausible` in fit for what survey data add. */
export function doubts(body: Body): readonly Question[] {
  const taken = MEASURE_IDS.filter((id) => bodyValue(body, id) !== undefined);
  const entries = taken.map((id) => doubtEntry(id, bodyValue(body, id)!, body.wearer));
  return [
    ...entries,
    ...ORDER.map((pair) => doubtPair(body, pair)),
    doubtParts(body),
    ...taken.map((id) => doubtReading(body, id)),
  ]
    .filter((q) => q !== null)
    .filter((q) => q.code === 'second-reading' || !isAnswered(body, q));
}
