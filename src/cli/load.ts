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
import { fileProblem, type FILE_WORDS } from './usage-word-table.ts';

/** The body that a file is about, if it is about one. */
function bodyIn(opened: Opened): Body | undefined {
  if (opened.kind === 'fitting') return opened.fitting.body;
  if (opened.kind === 'person') return opened.person.body;
  return opened.kind === 'measures' ? opened.body : undefined;
}

/** What is in a file; a sample where its id is given and no file has that name. */
async function open(io: Io, path: string, wishes: Omit<Wishes, 'id'> = {}): Promise<Opened> {
  if (SAMPLES.some((s) => s.id === path) && !(await io.exists(path)))
    return { kind: 'pattern', pattern: sample(path) };
  const opened = openBytes(await io.readFile(path), path, { ...wishes, id: bareName(path, 'body') });
  const person = bodyIn(opened);
  if (person) io.met?.(person);
  return opened;
}

const unwanted = (
  file: string,
  wanted: Parameters<(typeof FILE_WORDS)['other-format']>[0]['wanted'],
  { kind }: Opened,
): InputError => new InputError(fileProblem('other-format', { file }, { wanted, found: kind }));

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
  const body = bodyIn(opened);
  if (!body) throw unwanted(path, 'body', opened);
  return { body, questions: [], findings: [] };
}

export async function loadChart(io: Io, path: string, options: TableOptions): Promise<SizeChart> {
  const opened = await open(io, path, { ...options, table: 'sizes' });
  if (opened.kind !== 'chart') throw unwanted(path, 'chart', opened);
  return opened.chart;
}

/** A pattern document, a sample by its id where no file has that name, or a size table: a pattern of which only the table is known. */
export async function loadPattern(io: Io, path: string, options: TableOptions = {}): Promise<Pattern> {
  const opened = await open(io, path, options);
  if (opened.kind === 'chart')
    return tablePattern(bareName(path, 'table'), opened.name, opened.chart, options.wearer);
  if (opened.kind !== 'pattern') throw unwanted(path, 'pattern', opened);
  return opened.pattern;
}

export async function loadFitting(io: Io, path: string): Promise<Fitting> {
  const opened = await open(io, path);
  if (opened.kind !== 'fitting') throw unwanted(path, 'fitting', opened);
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
  throw new InputError(fileProblem('no-pieces', { file }, { pattern: pattern.name }));
}

/** A fitting or a pattern, by what the file says it is, for a deed on its pieces; a sample by its id. @throws InputError where only a size table is known */
export async function loadEither(
  io: Io,
  path: string,
): Promise<Extract<Opened, { kind: 'fitting' | 'pattern' }>> {
  const opened = await open(io, path);
  if (opened.kind !== 'fitting' && opened.kind !== 'pattern') throw unwanted(path, 'either', opened);
  needPieces(opened.kind === 'fitting' ? opened.fitting.pattern : opened.pattern, path);
  return opened;
}
