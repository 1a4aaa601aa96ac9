import {
  InputError,
  parseChartCsv,
  parseMeasuresCsv,
  readBody,
  readFitting,
  readPattern,
  type Body,
  type Fitting,
  type Pattern,
  type Question,
  type SizeChart,
} from '../garment/index.ts';
import { SAMPLES, sample } from '../samples/index.ts';
import type { Io } from './io.ts';

/** Text of a file whatever a spreadsheet saved it as: UTF-8, UTF-16 with its mark, else the old Western code page (where ½ is one byte). */
function decodeText(bytes: Uint8Array): string {
  const [a, b] = bytes;
  if (a === 0xff && b === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (a === 0xfe && b === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** Runs a reader with the file's name added to whatever it finds wrong. */
async function reading<T>(io: Io, path: string, read: (text: string) => T): Promise<T> {
  const text = decodeText(await io.readFile(path));
  try {
    return read(text);
  } catch (error) {
    throw error instanceof InputError ? error.inFile(path) : error;
  }
}

/** The first word of the format field, if the text is one of our documents. */
function formatOf(text: string): string | null {
  return /^\s*\{/.test(text)
    ? (/"format"\s*:\s*"(pintrue-[a-z]+)"/.exec(text.slice(0, 100_000))?.[1] ?? 'json')
    : null;
}

/** A file's name without its folders. */
export const fileName = (path: string): string => path.replace(/^.*[/\\]/, '');

const bareName = (path: string): string => fileName(path).replace(/\.[^.]*$/, '') || 'body';

export interface BodyOptions {
  readonly wearer: Body['wearer'];
  readonly waist: Body['waist'];
}

/**
 * A body from a table of measurements (CSV), a body document, or a fitting.
 * A table knows no name, wearer or waist: they are the file's name and the options.
 */
export async function loadBody(
  io: Io,
  path: string,
  options: BodyOptions,
): Promise<{ body: Body; questions: readonly Question[] }> {
  return reading(io, path, (text) => {
    const format = formatOf(text);
    if (format === 'pintrue-fitting') return { body: readFitting(text).body, questions: [] };
    if (format !== null) return { body: readBody(text), questions: [] };
    const { readings, questions } = parseMeasuresCsv(text, options.wearer);
    const inches = Object.values(readings)
      .flat()
      .filter((r) => /["″]|\bin\b|inch/i.test(r.typed ?? '')).length;
    const show = inches * 2 > Object.values(readings).flat().length ? 'in' : 'cm';
    return {
      body: {
        id: bareName(path),
        name: bareName(path),
        wearer: options.wearer,
        show,
        waist: options.waist,
        readings,
      },
      questions,
    };
  });
}

export function loadChart(io: Io, path: string, waist: SizeChart['waist']): Promise<SizeChart> {
  return reading(io, path, (text) => parseChartCsv(text, waist));
}

/** A pattern document; or one of the samples by its id, where no file has that name. */
export async function loadPattern(io: Io, path: string): Promise<Pattern> {
  if (SAMPLES.some((s) => s.id === path) && !(await io.exists(path))) return sample(path);
  return reading(io, path, readPattern);
}

export function loadFitting(io: Io, path: string): Promise<Fitting> {
  return reading(io, path, readFitting);
}

/** A fitting or a pattern, by what the file says it is; a sample by its id. */
export async function loadEither(
  io: Io,
  path: string,
): Promise<{ kind: 'fitting'; fitting: Fitting } | { kind: 'pattern'; pattern: Pattern }> {
  if (SAMPLES.some((s) => s.id === path) && !(await io.exists(path)))
    return { kind: 'pattern', pattern: sample(path) };
  return reading(io, path, (text) => {
    if (formatOf(text) === 'pintrue-pattern') return { kind: 'pattern' as const, pattern: readPattern(text) };
    return { kind: 'fitting' as const, fitting: readFitting(text) };
  });
}
