import { degrees, len, lenAs, listOf, t, type Phrase } from '../words/phrase.ts';
import { phraseOf, type FindingValues, type ValuesOf } from '../words/table.ts';
import { renderPhrase } from '../words/render-phrase.ts';
import type { Tell } from '../words/tell.ts';
import { MEASURES } from './measure.ts';
import type { MeasureId } from './measure-id.ts';
import { measureWord } from './measure-word.ts';
import type { Question } from './question.ts';

type Of = { readonly measure: MeasureId; readonly value: number };

const measured = ({ measure, value }: Of): Phrase =>
  MEASURES[measure].kind === 'angle' ? t`${degrees(value)}` : t`${len(value)}`;

/** The number that was read, never the body: `The bust of 40 cm`. */
const reading = (of: Of): Phrase => t`The ${measureWord(of.measure)} of ${measured(of)}`;

const UNITS = { in: t`inches`, cm: t`centimetres`, mm: t`millimetres` } as const;

/** What was probably typed: `inches: 40 in`. */
export const meantIn = (value: number, unit: keyof typeof UNITS): Phrase =>
  t`${UNITS[unit]}: ${lenAs(value, unit)}`;

/** The questions about a body's entries, by code. `meant` is what may have been meant. */
export const QUESTION_WORDS = {
  'out-of-range': ({ least, most, ...of }: Of & { least: number; most: number }) =>
    MEASURES[of.measure].kind === 'angle'
      ? t`${reading(of)} lies outside ${degrees(least)} to ${degrees(most)}, where most lie. Please measure again; if it is right, keep it.`
      : t`${reading(of)} lies outside ${len(least)} to ${len(most)}, where most lie. Please measure again; if it is right, keep it.`,
  'unit-doubtful': ({ meant, beside, ...of }: Of & { meant: Phrase; beside: 'anyone' | 'others' }) =>
    beside === 'anyone'
      ? t`${reading(of)} may have been taken in another unit. Was it in ${meant}?`
      : t`${reading(of)} does not go with the other measures. Was ${meant} meant?`,
  'pair-unusual': ({ other, ...of }: Of & { other: Of }) =>
    t`The ${measureWord(of.measure)} is ${measured(of)} and the ${measureWord(other.measure)} ${measured(other)}. Please look again; if they are right, keep them.`,
  swapped: ({ other, beside, ...of }: Of & { other: Of; beside: 'anyone' | 'others' }) =>
    beside === 'anyone'
      ? t`The ${measureWord(of.measure)} is ${measured(of)} and the ${measureWord(other.measure)} ${measured(other)}. Were the two exchanged? Please look again; if they are right, keep them.`
      : t`The ${measureWord(of.measure)} (${measured(of)}) and the ${measureWord(other.measure)} (${measured(other)}) would go with the other measures if they were exchanged. Were they?`,
  'parts-apart': ({ front, back, whole }: { front: number; back: number; whole: number }) =>
    t`Front (${len(front)}) and back (${len(back)}) crotch length make ${len(front + back)} together; the whole was read as ${len(whole)}. Please look again; if they are right, keep them.`,
  'second-reading': ({ measures }: { measures: readonly MeasureId[] }) =>
    measures.length === 1
      ? t`The ${measureWord(measures[0]!)} was read once. One reading can't show a slip of ${len(25.4)}: please measure it again.`
      : t`Read once: ${listOf(measures.map((m) => t`${measureWord(m)}`))}. One reading can't show a slip of ${len(25.4)}: please measure each again.`,
  'third-reading': ({ measure, within }: { measure: MeasureId; within: number }) =>
    t`Readings of the ${measureWord(measure)} differ by more than ${measured({ measure, value: within })}. Please take it once more; meanwhile their average is used.`,
  unusual: ({ is, ...of }: Of & { is: { large: boolean } | { height: number; usual: number } }) =>
    'height' in is
      ? t`${reading(of)} is seldom met with a height of ${len(is.height)}, for which the size table has ${len(is.usual)}. Please take it again; if it is right, keep it.`
      : t`${reading(of)} is ${is.large ? t`larger` : t`smaller`} than the other measures lead one to expect. Please take it again; if it is right, keep it.`,
};

/** Makes a question. The compiler asks of each code the values that it says. */
export const question = <C extends keyof typeof QUESTION_WORDS>(
  code: C,
  measure: MeasureId,
  values: ValuesOf<typeof QUESTION_WORDS, C>,
  more: Pick<Question, 'other' | 'suggest'> = {},
): Question => ({ code, measure, ...more, values: values as FindingValues });

/** A question as it is put to one person. */
export const sayQuestion = ({ code, values }: Question, tell: Tell): string =>
  renderPhrase(phraseOf(QUESTION_WORDS, code, values), tell);
