import { InputError } from '../input-error.ts';
import { jsonFault } from './json-fault.ts';

/** Bounds of a document: characters, nesting, entries of one list or record. A garment of 60 pieces in 15 sizes is about 8 million characters. */
const LONGEST_TEXT = 60_000_000;
const DEEPEST = 40;
const LONGEST_TEXT_FIELD = 20_000;
const MOST_ENTRIES = 20_000;

/** Reads one value of a parsed document. `at` is its path. @throws InputError with that path */
export type Read<T> = (value: unknown, at: string) => T;

/** @throws InputError at a path of the document */
export function wrong(at: string, code: string, message: string): never {
  throw new InputError({ code, where: { path: at }, message });
}

function kindOf(value: unknown): string {
  if (value === null) return 'null';
  return Array.isArray(value) ? 'a list' : typeof value === 'object' ? 'a record' : `a ${typeof value}`;
}

/** A text of at most `most` characters. */
export function text(most = LONGEST_TEXT_FIELD): Read<string> {
  return (value, at) => {
    if (typeof value !== 'string') wrong(at, 'not-text', `There should be text here, not ${kindOf(value)}.`);
    if (value.length > most) wrong(at, 'too-long', `This text is longer than ${most} characters.`);
    return value;
  };
}

/** A name used as a key: not empty, and not one that JavaScript's own objects answer to. */
export const name: Read<string> = (value, at) => {
  const word = text(200)(value, at);
  if (word === '') wrong(at, 'empty', 'A name is missing here.');
  if (word in {}) wrong(at, 'reserved-name', `"${word}" can't be used as a name.`);
  return word;
};

/** A finite number within bounds. */
export function number(least = -1e9, most = 1e9): Read<number> {
  return (value, at) => {
    if (typeof value !== 'number' || !Number.isFinite(value))
      wrong(at, 'not-a-number', `There should be a number here, not ${kindOf(value)}.`);
    if (value < least || value > most) wrong(at, 'out-of-range', `${value} is outside ${least} to ${most}.`);
    return value === 0 ? 0 : value;
  };
}

export function whole(least: number, most: number): Read<number> {
  const read = number(least, most);
  return (value, at) => {
    const n = read(value, at);
    if (!Number.isInteger(n)) wrong(at, 'not-whole', `${n} should be a whole number.`);
    return n;
  };
}

export const flag: Read<boolean> = (value, at) =>
  typeof value === 'boolean'
    ? value
    : wrong(at, 'not-yes-or-no', `There should be true or false here, not ${kindOf(value)}.`);

/** A mark that is there or not. */
export const yes: Read<true> = (value, at) =>
  value === true || wrong(at, 'not-true', `There should be true here, or nothing, not ${kindOf(value)}.`);

/** One of the words given. */
export function oneOf<const T extends string | number>(...words: readonly T[]): Read<T> {
  return (value, at) =>
    words.find((w) => w === value) ??
    wrong(at, 'not-one-of', `${JSON.stringify(value)?.slice(0, 60)} should be one of ${words.join(', ')}.`);
}

/** A calendar date `2026-03-01`. */
export const date: Read<string> = (value, at) => {
  const day = text(30)(value, at);
  if (!/^\d{4}-\d{2}-\d{2}(T[\d:.]+Z?)?$/.test(day) || Number.isNaN(Date.parse(day)))
    wrong(at, 'not-a-date', `"${day}" should be a date such as 2026-03-01.`);
  return day;
};

export function orNull<T>(read: Read<T>): Read<T | null> {
  return (value, at) => (value === null ? null : read(value, at));
}

export function list<T>(read: Read<T>, least = 0, most = MOST_ENTRIES): Read<readonly T[]> {
  return (value, at) => {
    if (!Array.isArray(value)) wrong(at, 'not-a-list', `There should be a list here, not ${kindOf(value)}.`);
    if (value.length < least || value.length > most)
      wrong(at, 'list-length', `This list has ${value.length} entries; ${least} to ${most} are allowed.`);
    return value.map((entry, i) => read(entry, `${at}[${i}]`));
  };
}

function recordOf(value: unknown, at: string): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    wrong(at, 'not-a-record', `There should be a record { } here, not ${kindOf(value)}.`);
  return value as Readonly<Record<string, unknown>>;
}

const join = (at: string, key: string): string => (at === '' ? key : `${at}.${key}`);

/** A record with names as keys; keys come out sorted, so that the same content gives the same bytes. */
export function record<K extends string, T>(
  key: Read<K>,
  read: Read<T>,
  most = MOST_ENTRIES,
): Read<Readonly<Record<K, T>>> {
  return (value, at) => {
    const keys = Object.keys(recordOf(value, at)).sort();
    if (keys.length > most)
      wrong(at, 'list-length', `This record has ${keys.length} entries; at most ${most} are allowed.`);
    const entries = keys.map(
      (k) =>
        [
          key(k, join(at, k.slice(0, 60))),
          read((value as Record<string, unknown>)[k], join(at, k.slice(0, 60))),
        ] as const,
    );
    return Object.fromEntries(entries) as Record<K, T>;
  };
}

/** A field that may be absent. */
export interface Maybe<T> {
  readonly maybe: Read<T>;
}
export const maybe = <T>(read: Read<T>): Maybe<T> => ({ maybe: read });

/** For each field of T its reader; an optional field is wrapped in `maybe`. A field added to T and forgotten here does not compile. */
export type Fields<T> = {
  readonly [K in keyof T]-?: Record<never, never> extends Pick<T, K>
    ? Maybe<Exclude<T[K], undefined>>
    : Read<T[K]>;
};

/** A record with these fields and no others; fields come out in the order given here. */
export function fields<T extends object>(readers: Fields<T>): Read<T> {
  const entries = Object.entries(readers) as [string, Read<unknown> | Maybe<unknown>][];
  const known = new Set(entries.map(([key]) => key));
  return (value, at) => {
    const source = recordOf(value, at);
    const stray = Object.keys(source).find((key) => !known.has(key));
    if (stray !== undefined)
      wrong(join(at, stray.slice(0, 60)), 'unknown-field', 'This field is not known here.');
    const out: Record<string, unknown> = {};
    for (const [key, read] of entries) {
      const given = Object.hasOwn(source, key) ? source[key] : undefined;
      if (given === undefined) {
        if (typeof read === 'function') wrong(join(at, key), 'missing', 'This field is missing.');
        continue;
      }
      out[key] = (typeof read === 'function' ? read : read.maybe)(given, join(at, key));
    }
    return out as T;
  };
}

/** A record whose field `kind` says which of the shapes it has. */
export function byKind<T extends { readonly kind: string }>(readers: {
  readonly [K in T['kind']]: Read<Extract<T, { kind: K }>>;
}): Read<T> {
  return (value, at) => {
    const kind = recordOf(value, at)['kind'];
    const read =
      typeof kind === 'string' && Object.hasOwn(readers, kind) ? readers[kind as T['kind']] : undefined;
    if (read === undefined)
      wrong(join(at, 'kind'), 'not-one-of', `The kind should be one of ${Object.keys(readers).join(', ')}.`);
    return read(value, at) as T;
  };
}

/** Deepest nesting of a JSON text, without parsing it. */
function depthOf(source: string): number {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (let i = 0; i < source.length; i++) {
    const c = source.charCodeAt(i);
    if (c === 34) quoted = !quoted;
    else if (quoted) i += c === 92 ? 1 : 0;
    else if (c === 91 || c === 123) deepest = Math.max(deepest, ++depth);
    else if (c === 93 || c === 125) depth--;
  }
  return deepest;
}

/**
 * Parses a JSON text within bounds. A value that is already parsed passes through.
 * @throws InputError with row and column where the text stops being JSON
 */
export function parseJson(source: unknown): unknown {
  if (typeof source !== 'string') return source;
  if (source.length > LONGEST_TEXT)
    throw new InputError({
      code: 'too-large',
      where: { path: '' },
      message: `The document is over ${LONGEST_TEXT / 1e6} million characters.`,
    });
  if (depthOf(source) > DEEPEST)
    throw new InputError({
      code: 'too-deep',
      where: { path: '' },
      message: `The document is nested deeper than ${DEEPEST} levels.`,
    });
  const clean = source.replace(/^\ufeff/, '');
  try {
    return JSON.parse(clean) as unknown;
  } catch {
    const before = clean.slice(0, jsonFault(clean)).split('\n');
    throw new InputError({
      code: 'not-json',
      where: { row: before.length, column: before.at(-1)!.length + 1 },
      message: 'The file is broken here: this is not JSON.',
    });
  }
}
