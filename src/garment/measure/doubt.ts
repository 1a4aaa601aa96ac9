import type { Body } from './body.ts';
import { MEASURES, bodyReading, bodyValue, REPEAT_WITHIN } from './measure.ts';
import { MEASURE_IDS, type MeasureId } from './measure-id.ts';
import type { Question } from './question.ts';
import { MM_PER } from '../words/length-unit.ts';
import { writeLength } from '../words/write-length.ts';

/** Factors by which a slip of unit or of the decimal mark changes a length, with what was probably meant. */
const SLIPS: readonly { readonly factor: number; readonly meant: (mm: number) => string }[] = [
  { factor: MM_PER.in / MM_PER.cm, meant: (mm) => `inches: ${writeLength(mm, { in: 8 })}` },
  { factor: MM_PER.cm / MM_PER.in, meant: (mm) => `centimetres: ${writeLength(mm, 'cm')}` },
  { factor: MM_PER.in, meant: (mm) => `inches: ${writeLength(mm, { in: 8 })}` },
  { factor: 1 / MM_PER.in, meant: (mm) => `millimetres: ${writeLength(mm, 'mm')}` },
  { factor: MM_PER.cm, meant: (mm) => `centimetres: ${writeLength(mm, 'cm')}` },
  { factor: 1 / MM_PER.cm, meant: (mm) => `millimetres: ${writeLength(mm, 'mm')}` },
];

/**
 * Looks at one entry by itself: a bust of 40 cm is asked about (inches?), not taken silently.
 * @param mm the entry in mm (degrees for shoulder-slope)
 * @returns a question, or null when the entry is within the wearer's range
 */
export function doubtEntry(id: MeasureId, mm: number, wearer: Body['wearer']): Question | null {
  const { name, range, kind } = MEASURES[id];
  const [least, most] = range[wearer];
  if (mm >= least && mm <= most) return null;
  if (kind === 'angle')
    return {
      code: 'out-of-range',
      measure: id,
      message: `A ${name} of ${Math.round(mm)}° is unusual; most lie between ${least}° and ${most}°. Please measure again.`,
    };
  const shown = `${writeLength(mm, 'cm')} (${writeLength(mm, { in: 8 })})`;
  const slip = SLIPS.map((s) => ({ value: mm * s.factor, meant: s.meant(mm * s.factor) })).find(
    (s) => s.value >= least && s.value <= most,
  );
  if (slip !== undefined) {
    return {
      code: 'unit-doubtful',
      measure: id,
      message: `A ${name} of ${shown} is far from anyone's. Was it in ${slip.meant}?`,
      suggest: { value: slip.value, say: slip.meant },
    };
  }
  return {
    code: 'out-of-range',
    measure: id,
    message: `A ${name} of ${shown} is outside ${writeLength(least, 'cm')} to ${writeLength(most, 'cm')}. Please measure again; if it is right, keep it.`,
  };
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
  const swap = small > large ? ' Were the two exchanged?' : '';
  const show = (mm: number): string => `${writeLength(mm, 'cm')} (${writeLength(mm, { in: 8 })})`;
  const message = `The ${MEASURES[pair.small].name} is ${show(small)} and the ${MEASURES[pair.large].name} ${show(large)}.${swap} Please look again; if they are right, keep them.`;
  return {
    code: swap === '' ? 'pair-unusual' : 'swapped',
    measure: pair.small,
    other: pair.large,
    message,
    ...(swap === '' ? {} : { suggest: { value: large, say: 'exchange them' } }),
  };
}

/** Asks for another reading: a second of the girths that decide the size (statistics are blind to 25 mm there), a third where two differ. */
function doubtReading(body: Body, id: MeasureId): Question | null {
  const taken = bodyReading(body, id);
  if (taken === undefined || taken.ask === null) return null;
  const { name, kind } = MEASURES[id];
  if (taken.ask === 'second') {
    return {
      code: 'second-reading',
      measure: id,
      message: `The ${name} was read once. A slip of an inch there cannot be told from a real body: please take it a second time.`,
    };
  }
  const within = kind === 'angle' ? '3°' : `${REPEAT_WITHIN[kind]} mm`;
  return {
    code: 'third-reading',
    measure: id,
    message: `Readings of the ${name} differ by more than ${within}. Please take it once more; meanwhile their average is used.`,
  };
}

/** Everything doubtful about a body's entries taken by themselves and in pairs; see `plausible` in fit for what survey data add. */
export function doubts(body: Body): readonly Question[] {
  const taken = MEASURE_IDS.filter((id) => bodyValue(body, id) !== undefined);
  const entries = taken.map((id) => doubtEntry(id, bodyValue(body, id)!, body.wearer));
  return [
    ...entries,
    ...ORDER.map((pair) => doubtPair(body, pair)),
    ...taken.map((id) => doubtReading(body, id)),
  ].filter((q) => q !== null);
}
