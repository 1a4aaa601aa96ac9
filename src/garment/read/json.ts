import { InputError, problemMaker } from '../input-error.ts';
import { jsonFault } from './json-fault.ts';
import { DOCUMENT_WORDS, type Found } from './words-table.ts';

/** Bounds of a document: characters, nesting, entries of one list or record. A garment of 60 pieces in 15 sizes is about 8 million characters. */
const LONGEST_TEXT = 60_000_000;
const DEEPEST = 40;
const LONGEST_TEXT_FIELD = 20_000;
const MOST_ENTRIES = 20_000;

/** Reads one value of a parsed document. `at` is its path. @throws InputError with that path */
export type Read<T> = (value: unknown, at: string) => T;

const documentProblem = problemMaker(DOCUMENT_WORDS);

/** @throws InputError at a path of the document */
export function wrong<C extends keyof typeof DOCUMENT_WORDS>(
  at: string,
  code: C,
  ...values: Parameters<(typeof DOCUMENT_WORDS)[C]>
): never {
  throw new InputError(documentProblem(code, { path: at }, ...values));
}

/** What is found where something else should be. */
export function foundIn(value: unknown): Found {
  if (Array.isArray(value)) return 'list';
  if (typeof value === 'object') return value === null ? 'nothing' : 'record';
  if (typeof value === 'string') return 'text';
  return typeof value === 'number' ? 'number' : typeof value === 'boolean' ? 'truth' : 'nothing';
}

/** A value as it stands in the document, as much of it as a line can show. */
const shown = (value: unknown): string => (JSON.stringify(value) ?? '').slice(0, 60);

/** A text of at most `most` characters. */
export function text(most = LONGEST_TEXT_FIELD): Read<string> {
  return (value, at) => {
    if (typeof value !== 'string') wrong(at, 'not-text', { found: foundIn(value) });
    if (value.length > most) wrong(at, 'too-long', { most });
    return value;
  };
}

/** A name used as a key: not empty, and not one that JavaScript's own objects answer to. */
export const name: Read<string> = (value, at) => {
  const word = text(200)(value, at);
  if (word === '') wrong(at, 'empty');
  if (word in {}) wrong(at, 'reserved-name', { name: word });
  return word;
};

/** A finite number within bounds. */
export function number(least = -1e9, most = 1e9): Read<number> {
  return (value, at) => {
    if (typeof value !== 'number' || !Number.isFinite(value))
      wrong(at, 'not-a-number', { found: foundIn(value) });
    if (value < least || value > most) wrong(at, 'out-of-range', { given: value, least, most });
    return value === 0 ? 0 : value;
  };
}

export function whole(least: number, most: number): Read<number> {
  const read = number(least, most);
  return (value, at) => {
    const n = read(value, at);
    if (!Number.isInteger(n)) wrong(at, 'not-whole', { given: shown(n) });
    return n;
  };
}

export const flag: Read<boolean> = (value, at) =>
  typeof value === 'boolean' ? value : wrong(at, 'not-yes-or-no', { found: foundIn(value) });

/** A mark that is there or not. */
export const yes: Read<true> = (value, at) =>
  value === true || wrong(at, 'not-true', { found: foundIn(value) });

/** One of the words given. */
export function oneOf<const T extends string | number>(...words: readonly T[]): Read<T> {
  return (value, at) =>
    words.find((w) => w === value) ??
    wrong(at, 'not-one-of', { given: shown(value), known: words.map(String) });
}

/** A calendar date `2026-03-01`. */
export const date: Read<string> = (value, at) => {
  const day = text(30)(value, at);
  if (!/^\d{4}-\d{2}-\d{2}(T[\d:.]+Z?)?$/.test(day) || Number.isNaN(Date.parse(day)))
    wrong(at, 'not-a-date', { given: day });
  return day;
};

export function orNull<T>(read: Read<T>): Read<T | null> {
  return (value, at) => (value === null ? null : read(value, at));
}

export function list<T>(read: Read<T>, least = 0, most = MOST_ENTRIES): Read<readonly T[]> {
  return (value, at) => {
    if (!Array.isArray(value)) wrong(at, 'not-a-list', { found: foundIn(value) });
    if (value.length < least || value.length > most)
      wrong(at, 'list-length', { has: value.length, least, most });
    return value.map((entry, i) => read(entry, `${at}[${i}]`));
  };
}

function recordOf(value: unknown, at: string): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    wrong(at, 'not-a-record', { found: foundIn(value) });
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
    if (keys.length > most) wrong(at, 'list-length', { has: keys.length, least: 0, most });
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
    if (stray !== undefined) wrong(join(at, stray.slice(0, 60)), 'unknown-field');
    const out: Record<string, unknown> = {};
    for (const [key, read] of entries) {
      const given = Object.hasOwn(source, key) ? source[key] : undefined;
      if (given === undefined) {
        if (typeof read === 'function') wrong(join(at, key), 'missing');
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
    if (kind === undefined) wrong(join(at, 'kind'), 'missing');
    const read =
      typeof kind === 'string' && Object.hasOwn(readers, kind) ? readers[kind as T['kind']] : undefined;
    if (read === undefined)
      wrong(join(at, 'kind'), 'not-one-of', { given: shown(kind), known: Object.keys(readers) });
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
  if (source.length > LONGEST_TEXT) wrong('', 'too-large', { most: LONGEST_TEXT });
  if (depthOf(source) > DEEPEST) wrong('', 'too-deep', { most: DEEPEST });
  const clean = source.replace(/^\ufeff/, '');
  try {
    return JSON.parse(clean) as unknown;
  } catch {
    const before = clean.slice(0, jsonFault(clean)).split('\n');
    const where = { row: before.length, column: before.at(-1)!.length + 1 };
    throw new InputError(documentProblem('not-json', where));
  }
}
