import type { Fitting } from '../fitting.ts';
import { InputError } from '../input-error.ts';
import type { Past, PastPhoto, PastState, PastVersion } from '../past.ts';
import type { Pattern } from '../pattern.ts';
import { date, fields, list, name, text, whole, wrong, type Read } from './json.ts';

/** A document within a document: read by its own reader, its faults told under its own path. */
export const within =
  <T>(read: (source: unknown) => T): Read<T> =>
  (value, at) => {
    // A text would be read as a file of its own.
    if (typeof value === 'string') wrong(at, 'not-a-record', { found: 'text' });
    try {
      return read(value);
    } catch (error) {
      throw error instanceof InputError ? error.under(at) : error;
    }
  };

/** Longest photograph, in characters: a picture of 1600 pixels takes about a twentieth. */
const LONGEST_PHOTO = 10_000_000;
/** The first three bytes of every JPEG picture, ff d8 ff, are these four characters (ISO/IEC 10918-1, markers SOI and the next). */
const JPEG_BASE64 = /^\/9j\/[A-Za-z0-9+/]*={0,2}$/;

const readJpeg: Read<string> = (value, at) => {
  const jpeg = text(LONGEST_PHOTO)(value, at);
  return jpeg.length % 4 === 0 && JPEG_BASE64.test(jpeg) ? jpeg : wrong(at, 'not-a-photograph');
};

/** The past of the document called `id`, each of its documents read by `read`. */
export const readPast =
  <D extends { readonly id: string }>(id: string, read: (source: unknown) => D): Read<Past<D>> =>
  (value, at) => {
    const doc: Read<D> = (found, path) => {
      const own = within(read)(found, path);
      return own.id === id ? own : wrong(`${path}.id`, 'not-one-of', { given: own.id, known: [id] });
    };
    const past = fields<Past<D>>({
      at: whole(0, 1e6),
      states: list(fields<PastState<D>>({ say: text(), on: date, doc }), 1),
      versions: list(fields<PastVersion<D>>({ name: text(), on: date, doc })),
      photos: list(fields<PastPhoto>({ id: name, jpeg: readJpeg })),
    })(value, at);
    const most = past.states.length - 1;
    if (past.at > most) wrong(`${at}.at`, 'out-of-range', { given: past.at, least: 0, most });
    return past;
  };

/** Puts the pattern back that is only a number in a fitting's state; a document of any version keeps its other fields. */
export const withNumbered =
  (patterns: readonly unknown[], read: (source: unknown) => Fitting) =>
  (source: unknown): Fitting => {
    if (typeof source !== 'object' || source === null || !('pattern' in source)) return read(source);
    const number = whole(0, patterns.length - 1)(source.pattern, 'pattern');
    return read({ ...source, pattern: patterns[number] });
  };

/** Numbers patterns as they come: the same object has the same number. */
export function patternNumbers(): { readonly of: (pattern: Pattern) => number; readonly all: Pattern[] } {
  const all: Pattern[] = [];
  const numbers = new Map<Pattern, number>();
  return {
    all,
    of: (pattern) => {
      const number = numbers.get(pattern) ?? all.push(pattern) - 1;
      numbers.set(pattern, number);
      return number;
    },
  };
}
