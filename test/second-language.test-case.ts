import { expect } from 'vitest';
import {
  isPhrase,
  phraseOf,
  renderPhrase,
  type Finding,
  type FindingValues,
  type Part,
  type Phrase,
  type Tell,
} from '../src/garment/index.ts';
import { EVIDENCE_WORDS, REFUSAL_WORDS } from '../src/exchange/index.ts';
import { ROOM_WORDS } from '../src/pipeline/index.ts';
import { WORKBENCH_WORDS } from '../src/workbench/words/words-table.ts';

/**
 * A made-up second language: every letter of the program's own words has an accent. What is then said without one escaped the tables of words: it could not
 * be translated, and its lengths may be in a unit the person does not read.
 */
export const accented = (unit: Tell['unit']): Tell => ({
  unit,
  letters: (words) => words.replace(/\p{L}/gu, '$&\u0301'),
});

/** The phrase with the person's own words made unreadable, so that only the program's are looked at. */
export function withoutNames({ phrase }: Phrase): Phrase {
  const part = (p: Part): Part => {
    if (typeof p === 'string') return p;
    if ('name' in p) return { name: '#' };
    if ('plural' in p) return { ...p, one: withoutNames(p.one), other: withoutNames(p.other) };
    if ('list' in p) return { ...p, list: p.list.map(withoutNames) };
    if ('capital' in p) return { capital: withoutNames(p.capital) };
    // What is all about another unit than the person's: a slip of unit, asked about.
    return 'as' in p ? { name: '#' } : p;
  };
  return { phrase: phrase.map(part) };
}

const UNITS = { in: /\bin\b|\byd\b/g, cm: /\bmm\b|\bcm\b|\bm\b/g };

/** Letters without an accent that are no unit of this person. @param said by `accented(unit)`, without names */
export const bareIn = (said: string, unit: 'in' | 'cm'): string[] =>
  said
    .replace(/\p{L}\u0301/gu, '')
    .replace(UNITS[unit], '')
    .match(/\p{L}+/gu) ?? [];
const bare = (phrase: Phrase, unit: 'in' | 'cm'): string[] =>
  bareIn(renderPhrase(withoutNames(phrase), accented(unit)), unit);

/** The words of a drawing, each text of it. */
export const drawnTexts = (svg: string): string[] =>
  [...svg.matchAll(/<(text|title)\b[^>]*>([^<]*)</g)].map((m) => m[2]!);

/** All tables: the sentences of findings, why a reader took a thing so, why a file is of no use, and why the page cannot do a thing. */
export const ALL_WORDS = [...ROOM_WORDS, EVIDENCE_WORDS, REFUSAL_WORDS, WORKBENCH_WORDS];
export const words = Object.assign({}, ...ALL_WORDS) as Record<string, (values: never) => Phrase>;
export const sentenceOf = (code: string, values: FindingValues): Phrase => phraseOf(words, code, values);

/** Every phrase inside plain data, and the sentence of every finding in it. @param met takes the codes of the findings */
export function phrasesIn(value: unknown, met: Set<string>): Phrase[] {
  if (typeof value !== 'object' || value === null) return [];
  if (isPhrase(value)) return [value];
  if (Array.isArray(value)) return value.flatMap((v) => phrasesIn(v, met));
  const found = Object.values(value).flatMap((v) => phrasesIn(v, met));
  if (!('code' in value) || !('values' in value)) return found;
  const { code, values } = value as Finding;
  met.add(code);
  return [...found, sentenceOf(code, values)];
}

/** Texts of several words in plain data that are no phrase: no translation would see them. @param own keys whose text is the document's own, or a citation */
export function bareTexts(value: unknown, own: readonly string[] = []): string[] {
  if (typeof value === 'string') return /\p{L}\s+\p{L}/u.test(value) ? [value] : [];
  if (typeof value !== 'object' || value === null || isPhrase(value)) return [];
  return Object.entries(value).flatMap(([key, v]) => (own.includes(key) ? [] : bareTexts(v, own)));
}

/** Expects that no word of these escapes a table, and that there are more than `least` of them. */
export function expectAllSaid(phrases: readonly Phrase[], least: number): void {
  expect(phrases.length).toBeGreaterThan(least);
  const escaped = new Set<string>();
  for (const phrase of phrases)
    for (const unit of ['in', 'cm'] as const)
      if (bare(phrase, unit).length > 0 || /\[object|NaN|undefined/.test(renderPhrase(phrase, { unit })))
        escaped.add(renderPhrase(phrase, { unit }));
  expect([...escaped]).toEqual([]);
}

/** Everything that is said as somebody's own word. */
export function namesIn({ phrase }: Phrase): string[] {
  return phrase.flatMap((p) => {
    if (typeof p === 'string') return [];
    if ('name' in p) return [p.name];
    if ('plural' in p) return [...namesIn(p.one), ...namesIn(p.other)];
    if ('list' in p) return p.list.flatMap(namesIn);
    return 'capital' in p ? namesIn(p.capital) : [];
  });
}

/** Every text and number of a document, whole, in small letters. */
export function textsIn(value: unknown, into = new Set<string>()): ReadonlySet<string> {
  if (typeof value === 'string' || typeof value === 'number') into.add(String(value).toLowerCase());
  else if (typeof value === 'object' && value !== null)
    for (const own of Object.values(value)) textsIn(own, into);
  return into;
}
