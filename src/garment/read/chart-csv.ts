import type { SizeChart } from '../chart.ts';
import { readTable, sheetProblem, type Cell, type Row } from './csv.ts';
import { InputError } from '../input-error.ts';
import { LEVELS } from '../level.ts';
import { MEASURE_IDS, type MeasureId } from '../measure/measure-id.ts';
import { levelNamed, measureNamed } from './measure-name.ts';
import {
  cellProblem,
  expectHeader,
  Problems,
  readCellLength,
  readUnit,
  tooManyCells,
  unknownMeasure,
} from './measures-csv.ts';
import { MEASURES } from '../measure/measure.ts';
import type { Level } from '../piece.ts';

type Values = (number | null)[];
const LONGEST_SIZE = 40;
/** Words for "the table is silent here". */
const SILENT = new Set(['', '-', '–', '—', 'n/a']);

interface Rows {
  readonly body: Partial<Record<MeasureId, Values>>;
  readonly finished: Record<Level, Values>;
  readonly finishedLengths: Partial<Record<MeasureId, Values>>;
}

function readSizes(header: Row): readonly Cell[] {
  const sizes = header.slice(3);
  while (sizes.at(-1)?.text === '') sizes.pop();
  const problems = new Problems();
  if (sizes.length === 0) problems.add(sheetProblem('no-sizes', { row: header[0]!.row, column: 4 }));
  const seen = new Set<string>();
  for (const cell of sizes) {
    if (cell.text === '') problems.add(cellProblem(cell, 'size', 'empty', { what: 'size' }));
    if (cell.text.length > LONGEST_SIZE)
      problems.add(cellProblem(cell, 'size', 'too-long', { most: LONGEST_SIZE }));
    if (seen.has(cell.text)) problems.add(cellProblem(cell, 'size', 'size-twice', { size: cell.text }));
    seen.add(cell.text);
  }
  problems.settle();
  return sizes;
}

/** Sizes are listed smallest first; a girth that shrinks from one to the next is a slip or a chart the wrong way round. */
function checkRising(
  cells: readonly Cell[],
  values: Values,
  sizes: readonly Cell[],
  problems: Problems,
): void {
  let last = -1;
  for (const [i, value] of values.entries()) {
    if (value === null) continue;
    if (last >= 0 && value < values[last]!) {
      const [size, before] = [sizes[i]!.text, sizes[last]!.text];
      problems.add(cellProblem(cells[i]!, size, 'sizes-fall', { size, before }));
      return;
    }
    last = i;
  }
}

function readValues(row: Row, sizes: readonly Cell[], problems: Problems): Values | null {
  const unit = readUnit(row[2], row, 3, null, problems);
  if (unit === null) return null;
  const values = sizes.map((size, i) => {
    const cell = row[i + 3];
    return cell === undefined || SILENT.has(cell.text.toLowerCase())
      ? null
      : readCellLength(cell, size.text, unit, problems);
  });
  return values;
}

/** Where a row belongs, or null with a problem: a body measure, a finished girth by level, or a finished length. */
function placeOf(
  row: Row,
  problems: Problems,
): { kind: 'body' | 'length'; id: MeasureId } | { kind: 'girth'; level: Level } | null {
  const [name, kind] = [row[0]!, row[1] ?? { text: '', row: row[0]!.row, column: 2 }];
  const word = kind.text.toLowerCase();
  if (word !== 'body' && word !== 'finished') {
    problems.add(cellProblem(kind, 'kind', 'kind', { given: kind.text.slice(0, 40) }));
    return null;
  }
  const id = measureNamed(name.text) ?? LEVELS.find((l) => l.level === levelNamed(name.text))?.girth ?? null;
  const level = levelNamed(name.text);
  if (word === 'finished' && level !== null) return { kind: 'girth', level };
  if (id !== null && MEASURES[id].kind !== 'angle') {
    // A finished girth of a measure that is no level (a hand, a head) has nothing to be compared at.
    if (word === 'body' || MEASURES[id].kind === 'length')
      return { kind: word === 'body' ? 'body' : 'length', id };
  }
  problems.add(
    unknownMeasure(
      name,
      'measure',
      word === 'body' ? MEASURE_IDS : [...MEASURE_IDS, ...LEVELS.map((l) => l.level)],
    ),
  );
  return null;
}

function addRow(rows: Rows, row: Row, sizes: readonly Cell[], problems: Problems): void {
  const before = problems.count;
  const surplus = tooManyCells(row, sizes.length + 3);
  if (surplus !== null) return problems.add(surplus);
  const place = placeOf(row, problems);
  const values = readValues(row, sizes, problems);
  if (place === null || values === null || problems.count > before) return;
  if (values.every((v) => v === null))
    return problems.add(cellProblem(row[0]!, 'measure', 'empty', { what: 'row' }));
  const target: Record<string, Values | undefined> =
    place.kind === 'girth' ? rows.finished : place.kind === 'body' ? rows.body : rows.finishedLengths;
  const key = place.kind === 'girth' ? place.level : place.id;
  if (target[key] !== undefined)
    return problems.add(
      cellProblem(row[0]!, 'measure', 'row-twice', { measure: row[0]!.text, kind: row[1]!.text }),
    );
  if (place.kind === 'girth' || MEASURES[place.id].kind === 'girth')
    checkRising(row.slice(3), values, sizes, problems);
  if (problems.count === before) target[key] = values;
}

/**
 * Reads a size chart `measure,kind,unit,<size>,…` (kind = body | finished) as people type or paste it. A finished row names a level
 * (`bust`) or the girth taken there (`bust-girth`); an empty cell or a dash means the table is silent for that size.
 * @throws InputError with row and column of everything that can't be read
 */
export function parseChartCsv(text: string, waist: SizeChart['waist'] = 'unsaid'): SizeChart {
  const { chart, wrong } = chartOfRows(readTable(text), waist);
  if (wrong) throw wrong;
  return chart;
}

/** What could be read of a table, and what is wrong with the rows that were left out. */
export interface TableRead {
  readonly chart: SizeChart;
  readonly wrong: InputError | null;
}

/**
 * The same of cells that are parted already: rows that cannot be read are left out and told.
 * @throws InputError where there are no sizes, or no row can be read
 */
export function chartOfRows(table: readonly Row[], waist: SizeChart['waist']): TableRead {
  const [header, ...lines] = table;
  expectHeader(header!, ['measure', 'kind', 'unit']);
  const sizes = readSizes(header!);
  if (lines.length === 0)
    throw new InputError(sheetProblem('empty', { row: header![0]!.row + 1, column: 1 }, { what: 'rows' }));
  const problems = new Problems();
  const rows: Rows = { body: {}, finished: {}, finishedLengths: {} };
  for (const line of lines) addRow(rows, line, sizes, problems);
  if (Object.values(rows).every((kind) => Object.keys(kind).length === 0)) problems.settle();
  const chart = { sizes: sizes.map((c) => ({ id: c.text, label: c.text })), waist, ...rows };
  return { chart, wrong: problems.error() };
}
