import { called, calledAll, clothLength, figure, t } from '../words/phrase.ts';

/** What can be wrong with a length as it was typed, by code. */
export const LENGTH_WORDS = {
  empty: () => t`Nothing is written here.`,
  'too-long': ({ characters }: { characters: number }) =>
    t`That is longer than a length can be (${characters} characters).`,
  negative: ({ given }: { given: string }) => t`A measurement can't be below zero: "${called(given)}".`,
  zero: () => t`A measurement must be more than nothing.`,
  'too-large': ({ given, most }: { given: string; most: number }) =>
    t`"${called(given)}" would be over ${clothLength(most)}.`,
  'not-a-number': ({ given, figures }: { given: string; figures: boolean }) =>
    figures ? t`"${called(given)}" is not a number.` : t`"${called(given)}" has no number in it.`,
  'unknown-unit': ({ given }: { given: string }) =>
    t`"${called(given)}" is not a unit known here: ${calledAll(['in', 'cm', 'mm'], 'or')}.`,
  'zero-denominator': ({ given }: { given: string }) => t`${called(given)} divides by nothing.`,
  'odd-fraction': ({ given, mixed }: { given: string; mixed: boolean }) =>
    mixed
      ? t`${called(given)} after a whole number should be less than one.`
      : t`${called(given)} is not a division of a tape: halves, quarters, eighths and sixteenths are.`,
  'two-numbers': ({ given }: { given: string }) =>
    t`"${called(given)}" is two numbers; write a fraction as ${called('40 1/2')}.`,
  'too-many-inches': ({ given, inches }: { given: string; inches: number }) =>
    t`After feet the inches go up to 11; "${called(given)}" has ${figure(inches)}.`,
  'thousands-or-decimal': (of: { given: string; decimal: number; thousands: number; unit: string }) =>
    t`"${called(of.given)}" can mean ${figure(of.decimal)} or ${of.thousands} ${called(of.unit)}; write it without the mark between the digits.`,
};
