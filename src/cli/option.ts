import {
  LEVELS,
  levelNamed,
  nearestWord,
  readLength,
  middleSize,
  type Level,
  type Pattern,
  type Phrase,
} from '../garment/index.ts';
import { UsageError, type Options } from './verb.ts';

/** The text of an option, or undefined. */
export function textOption(options: Options, name: string): string | undefined {
  const value = options[name];
  return typeof value === 'string' ? value : undefined;
}

/** All values of an option that may be given more than once. */
export function textOptions(options: Options, name: string): readonly string[] {
  const value = options[name];
  return Array.isArray(value) ? value.filter((v): v is string => typeof v === 'string') : [];
}

/** An option without which the verb can't go on. @throws UsageError */
export function needOption(options: Options, name: string, what: Phrase): string {
  const value = textOption(options, name);
  if (value === undefined || value === '') throw new UsageError('option-missing', { option: name, what });
  return value;
}

/** One of the words given. @throws UsageError naming them */
export function choiceOption<const T extends string>(
  options: Options,
  name: string,
  words: readonly T[],
): T | undefined {
  const value = textOption(options, name);
  if (value === undefined) return undefined;
  const found = words.find((w) => w === value);
  if (found === undefined)
    throw new UsageError('option-choice', { option: name, known: words, given: value });
  return found;
}

/** A length typed with its unit, in mm. @throws UsageError */
export function lengthWord(word: string, where: string, signed = false): number {
  const read = readLength(word, 'mm', { signed });
  if (read.kind !== 'length') throw new UsageError('length', { where, why: read.message });
  if (!read.unitSaid && read.mm !== 0) throw new UsageError('length-unit', { where, given: word });
  return read.mm;
}

export function lengthOption(options: Options, name: string, signed = false): number | undefined {
  const value = textOption(options, name);
  return value === undefined ? undefined : lengthWord(value, `--${name}`, signed);
}

/** A whole or broken number within bounds. @throws UsageError */
export function numberOption(
  options: Options,
  name: string,
  least: number,
  most: number,
  whole = false,
): number | undefined {
  const value = textOption(options, name);
  if (value === undefined) return undefined;
  const n = /^-?\d+(\.\d+)?$/.test(value) ? Number(value) : Number.NaN;
  if (!(n >= least && n <= most) || (whole && !Number.isInteger(n)))
    throw new UsageError('option-number', { option: name, whole, least, most, given: value });
  return n;
}

/** A share typed as `50%` or `0.5`. @throws UsageError */
export function shareOption(options: Options, name: string): number | undefined {
  const value = textOption(options, name);
  if (value === undefined) return undefined;
  const m = /^(\d+(?:[.,]\d+)?)\s*(%?)$/.exec(value);
  const n = m === null ? Number.NaN : Number(m[1]!.replace(',', '.')) / (m[2] === '%' ? 100 : 1);
  if (!(n >= 0 && n <= 4)) throw new UsageError('option-share', { option: name, given: value });
  return n;
}

/** `name=value` pairs of an option that may be given more than once. @throws UsageError */
export function pairOptions(options: Options, name: string): readonly (readonly [string, string])[] {
  return textOptions(options, name).map((word) => {
    const at = word.indexOf('=');
    if (at <= 0 || at === word.length - 1) throw new UsageError('option-pair', { option: name, given: word });
    return [word.slice(0, at).trim(), word.slice(at + 1).trim()] as const;
  });
}

/** A level by any of its names; `base` passes through. @throws UsageError with the nearest name */
export function levelWord(word: string, where: string): Level {
  if (word === 'base') return word;
  const level = levelNamed(word);
  if (level !== null) return level;
  const known = LEVELS.map((l) => l.level);
  throw new UsageError('level-unknown', { where, given: word, near: nearestWord(word, known), known });
}

/** The index of a printed size of a pattern; the middle one when none is named. @throws UsageError naming the sizes */
export function sizeIndex(pattern: Pattern, id: string | undefined): number {
  if (id === undefined) return middleSize(pattern);
  const index = pattern.chart.sizes.findIndex((s) => s.id === id);
  if (index === -1)
    throw new UsageError('size-unknown', { given: id, known: pattern.chart.sizes.map((s) => s.id) });
  return index;
}
