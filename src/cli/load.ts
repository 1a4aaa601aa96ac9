import { bareName, openBytes, tablePattern, type Opened, type Wishes } from '../desk/index.ts';
import {
  InputError,
  type Body,
  type Finding,
  type Fitting,
  type Pattern,
  type Question,
  type SizeChart,
} from '../garment/index.ts';
import { SAMPLES, sample } from '../samples/index.ts';
import type { Io } from './io.ts';

const HOLDS: Readonly<Record<Opened['kind'], string>> = {
  fitting: 'a fitting',
  pattern: 'a pattern',
  person: 'a person',
  measures: 'a table of measures',
  chart: 'a size table',
  drawing: 'a drawing, which “pintrue read” brings in',
};

/** What is in a file; a sample where its id is given and no file has that name. */
async function open(io: Io, path: string, wishes: Omit<Wishes, 'id'> = {}): Promise<Opened> {
  if (SAMPLES.some((s) => s.id === path) && !(await io.exists(path)))
    return { kind: 'pattern', pattern: sample(path) };
  return openBytes(await io.readFile(path), path, { ...wishes, id: bareName(path, 'body') });
}

const unwanted = (file: string, wanted: string, { kind }: Opened): InputError =>
  new InputError({
    code: 'other-format',
    where: { file },
    message: `${wanted} is wanted here; this is ${HOLDS[kind]}.`,
  });

/** What a person says of a table that does not say it itself. */
export type TableOptions = Pick<Wishes, 'wearer' | 'waist' | 'unit'>;

/**
 * A body from a table of measurements (CSV), a person's document, or a fitting; of a table what is doubtful and what was assumed as well.
 */
export async function loadBody(
  io: Io,
  path: string,
  options: TableOptions,
): Promise<{ body: Body; questions: readonly Question[]; findings: readonly Finding[] }> {
  const opened = await open(io, path, { ...options, table: 'measures' });
  if (opened.kind === 'measures') return opened;
  const held =
    opened.kind === 'fitting' ? opened.fitting : opened.kind === 'person' ? opened.person : undefined;
  if (!held) throw unwanted(path, 'A person or a table of measures', opened);
  return { body: held.body, questions: [], findings: [] };
}

export async function loadChart(io: Io, path: string, options: TableOptions): Promise<SizeChart> {
  const opened = await open(io, path, { ...options, table: 'sizes' });
  if (opened.kind !== 'chart') throw unwanted(path, 'A size table', opened);
  return opened.chart;
}

/** A pattern document, a sample by its id where no file has that name, or a size table: a pattern of which only the table is known. */
export async function loadPattern(io: Io, path: string, options: TableOptions = {}): Promise<Pattern> {
  const opened = await open(io, path, options);
  if (opened.kind === 'chart')
    return tablePattern(bareName(path, 'table'), opened.name, opened.chart, options.wearer);
  if (opened.kind !== 'pattern') throw unwanted(path, 'A pattern', opened);
  return opened.pattern;
}

export async function loadFitting(io: Io, path: string): Promise<Fitting> {
  const opened = await open(io, path);
  if (opened.kind !== 'fitting') throw unwanted(path, 'A fitting', opened);
  return opened.fitting;
}

/** A fitting for a deed on its pieces. @throws InputError where only a size table is known */
export async function loadPieces(io: Io, path: string): Promise<Fitting> {
  const fitting = await loadFitting(io, path);
  needPieces(fitting.pattern, path);
  return fitting;
}

function needPieces(pattern: Pattern, file: string): void {
  if (pattern.pieces.length > 0) return;
  throw new InputError({
    code: 'no-pieces',
    where: { file },
    message: `“${pattern.name}” is a size table without pieces: there is nothing to alter, to walk, to print or to lay. “pintrue plan” gives its sizes and the amounts to mark on your own paper.`,
  });
}

/** A fitting or a pattern, by what the file says it is, for a deed on its pieces; a sample by its id. @throws InputError where only a size table is known */
export async function loadEither(
  io: Io,
  path: string,
): Promise<Extract<Opened, { kind: 'fitting' | 'pattern' }>> {
  const opened = await open(io, path);
  if (opened.kind !== 'fitting' && opened.kind !== 'pattern')
    throw unwanted(path, 'A fitting or a pattern', opened);
  needPieces(opened.kind === 'fitting' ? opened.fitting.pattern : opened.pattern, path);
  return opened;
}
