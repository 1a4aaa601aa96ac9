import { t, type Phrase } from './phrase.ts';
import { word } from './word.ts';

/** What a sentence says, as plain data: it crosses workers and JSON. Lengths in mm, angles in degrees. */
export type FindingValues = { readonly [name: string]: FindingValue };
export type FindingValue =
  | string
  | number
  | boolean
  | null
  | Phrase
  | readonly FindingValue[]
  | { readonly [name: string]: FindingValue };

/** One room's sentences: a code, and how its values are said. */
export type WordsTable = Readonly<Record<string, (values: never) => Phrase>>;

/** The values a code must be given. */
export type ValuesOf<T extends WordsTable, C extends keyof T> =
  Parameters<T[C]> extends [infer V] ? V : Readonly<Record<string, never>>;

/** A code with its values as a phrase; a code that the table lacks is said as itself. */
export function phraseOf(table: WordsTable, code: string, values: FindingValues | undefined): Phrase {
  const row = Object.hasOwn(table, code) ? table[code] : undefined;
  return row ? row((values ?? {}) as never) : t`${word('code', code, code.replaceAll('-', ' '))}.`;
}
