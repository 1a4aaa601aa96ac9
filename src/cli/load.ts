import { bareName, openBytes, type Opened, type Wishes } from '../desk/index.ts';
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

/** A pattern document; or one of the samples by its id, where no file has that name. */
export async function loadPattern(io: Io, path: string): Promise<Pattern> {
  const opened = await open(io, path);
  if (opened.kind !== 'pattern') throw unwanted(path, 'A pattern', opened);
  return opened.pattern;
}

export async function loadFitting(io: Io, path: string): Promise<Fitting> {
  const opened = await open(io, path);
  if (opened.kind !== 'fitting') throw unwanted(path, 'A fitting', opened);
  return opened.fitting;
}

/** A fitting or a pattern, by what the file says it is; a sample by its id. */
export async function loadEither(
  io: Io,
  path: string,
): Promise<Extract<Opened, { kind: 'fitting' | 'pattern' }>> {
  const opened = await open(io, path);
  if (opened.kind !== 'fitting' && opened.kind !== 'pattern')
    throw unwanted(path, 'A fitting or a pattern', opened);
  return opened;
}
