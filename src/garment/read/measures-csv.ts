import type { Body, Reading } from '../measure/body.ts';
import { readTable, sheetProblem, type Cell, type Row } from './csv.ts';
import { doubtEntry } from '../measure/doubt.ts';
import { InputError, type InputPlace, type InputProblem } from '../input-error.ts';
import { MEASURE_IDS, type MeasureId } from '../measure/measure-id.ts';
import { measureNamed, nearestWord } from './measure-name.ts';
import { MEASURES } from '../measure/measure.ts';
import type { Question } from '../measure/question.ts';
import { readLength } from '../measure/read-length.ts';
import type { LengthUnit } from '../words/length-unit.ts';
import type { SHEET_WORDS } from './words-table.ts';

/** What a table of measurements holds: readings by measure in the order typed (a repeated row is a repeat reading), and what to ask about them. */
export interface MeasuresTable {
  readonly readings: Body['readings'];
  readonly questions: readonly Question[];
}

const UNIT_COLUMN: Readonly<Record<string, LengthUnit>> = {
  in: 'in',
  ins: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  cm: 'cm',
  mm: 'mm',
};

const placeOf = ({ row, column }: Cell, field: string): InputPlace => ({ row, column, field });

/** A problem at a cell. */
export const cellProblem = <C extends keyof typeof SHEET_WORDS>(
  cell: Cell,
  field: string,
  code: C,
  ...values: Parameters<(typeof SHEET_WORDS)[C]>
): InputProblem => sheetProblem(code, placeOf(cell, field), ...values);

/** Checks that a header names the columns expected, whatever the case. @throws InputError */
export function expectHeader(row: Row, expected: readonly string[]): void {
  for (const [i, name] of expected.entries()) {
    const cell = row[i];
    if (cell?.text.toLowerCase() === name) continue;
    const column = i + 1;
    const found = cell?.text.slice(0, 40) ?? null;
    throw new InputError(
      sheetProblem('header', { row: row[0]!.row, column }, { expected, column, wanted: name, found }),
    );
  }
}

/** Collects problems so that a table is mended in one go; tells or throws them together, at most twenty. */
export class Problems {
  readonly #found: InputProblem[] = [];
  /** How many were added, kept or not. */
  count = 0;

  add(problem: InputProblem): void {
    this.count++;
    if (this.#found.length < 20) this.#found.push(problem);
  }

  /** All that was added, as it is told or thrown; `null` when nothing was. */
  error(): InputError | null {
    const [first, ...more] = this.#found;
    return first === undefined ? null : new InputError(first, more);
  }

  /** @throws InputError when anything was added */
  settle(): void {
    const error = this.error();
    if (error) throw error;
  }
}

/** Turns a value cell into mm, adding a problem when it can't. Degrees are plain numbers. */
export function readCellLength(
  cell: Cell,
  field: string,
  unit: LengthUnit,
  problems: Problems,
): number | null {
  const read = readLength(cell.text, unit);
  if (read.kind === 'length') return read.mm;
  const { code, message } = read;
  problems.add({ code, where: placeOf(cell, field), message });
  return null;
}

function readDegrees(cell: Cell, problems: Problems): number | null {
  const m = /^(\d{1,3}(?:[.,]\d{1,3})?)\s*(?:°|deg|degrees)?$/i.exec(cell.text);
  const value = m === null ? Number.NaN : Number(m[1]!.replace(',', '.'));
  if (value > 0 && value < 90) return value;
  problems.add(cellProblem(cell, 'value', 'not-degrees', { given: cell.text.slice(0, 40) }));
  return null;
}

/** What is said of a measure nobody knows, with the nearest name. */
export function unknownMeasure(cell: Cell, field: string, known: readonly string[]): InputProblem {
  const near = nearestWord(cell.text, known);
  return cellProblem(cell, field, 'unknown-measure', { given: cell.text.slice(0, 40), near });
}

/** The unit cell, or null with a problem. An empty one falls to `fallback` when there is one. */
export function readUnit(
  cell: Cell | undefined,
  row: Row,
  column: number,
  fallback: LengthUnit | null,
  problems: Problems,
): LengthUnit | null {
  const word = cell?.text.toLowerCase().replace(/\.$/, '') ?? '';
  if (word === '' && fallback !== null) return fallback;
  if (Object.hasOwn(UNIT_COLUMN, word)) return UNIT_COLUMN[word]!;
  const at = cell ?? { text: '', row: row[0]!.row, column };
  problems.add(cellProblem(at, 'unit', 'unit', { given: at.text.slice(0, 40) }));
  return null;
}

/** A row with more cells than the header is most often a decimal comma in a comma-separated file. */
export function tooManyCells(row: Row, columns: number): InputProblem | null {
  const extra = row.slice(columns).find((c) => c.text !== '');
  if (extra === undefined) return null;
  return sheetProblem('too-many-cells', { row: extra.row, column: extra.column });
}

/** The cell of the column `side`, if there is one: left, right or nothing. Undefined with a problem when it says another thing. */
function readSide(cell: Cell | undefined, problems: Problems): Pick<Reading, 'side'> | undefined {
  const word = cell?.text.toLowerCase() ?? '';
  if (word === '') return {};
  if (word === 'left' || word === 'right') return { side: word };
  problems.add(cellProblem(cell!, 'side', 'side', { given: cell!.text.slice(0, 40) }));
  return undefined;
}

function readRow(
  row: Row,
  columns: number,
  sideAt: number,
  wearer: Body['wearer'],
  problems: Problems,
): { id: MeasureId; reading: Reading; question: Question | null } | null {
  const surplus = tooManyCells(row, columns);
  if (surplus !== null) problems.add(surplus);
  if (surplus !== null) return null;
  const name = row[0]!;
  const value = row[1];
  const id = measureNamed(name.text);
  if (id === null) problems.add(unknownMeasure(name, 'measure', MEASURE_IDS));
  if (value === undefined || value.text === '') {
    const cell = value ?? { text: '', row: name.row, column: 2 };
    problems.add(cellProblem(cell, 'value', 'empty', { what: 'value' }));
    return null;
  }
  const side = readSide(row[sideAt], problems);
  if (id === null || side === undefined) return null;
  if (MEASURES[id].kind === 'angle') {
    const degrees = readDegrees(value, problems);
    return degrees === null
      ? null
      : {
          id,
          reading: { value: degrees, typed: value.text, ...side },
          question: doubtEntry(id, degrees, wearer),
        };
  }
  // A unit written with the value needs no unit cell.
  const own = readLength(value.text, 'mm');
  const unit = readUnit(row[2], row, 3, own.kind === 'length' && own.unitSaid ? own.unit : null, problems);
  if (unit === null) return null;
  const mm = readCellLength(value, 'value', unit, problems);
  return mm === null
    ? null
    : {
        id,
        reading: { value: mm, typed: `${value.text} ${row[2]?.text ?? ''}`.trim(), ...side },
        question: doubtEntry(id, mm, wearer),
      };
}

/**
 * Reads `measure,value,unit` as people type or paste it. A measure given twice is a repeat reading. A fourth column `side` may say left or right.
 * @param wearer whose ranges the doubtful entries are judged by
 * @throws InputError with row and column of every cell that can't be read
 */
export function parseMeasuresCsv(text: string, wearer: Body['wearer'] = 'woman'): MeasuresTable {
  const [header, ...rows] = readTable(text);
  expectHeader(header!, ['measure', 'value', 'unit']);
  if (rows.length === 0)
    throw new InputError(
      sheetProblem('empty', { row: header![0]!.row + 1, column: 1 }, { what: 'measures' }),
    );
  const problems = new Problems();
  const sideAt = header!.findIndex((cell, i) => i > 2 && cell.text.toLowerCase() === 'side');
  const read = rows
    .map((row) => readRow(row, header!.length, sideAt, wearer, problems))
    .filter((r) => r !== null);
  problems.settle();
  const readings: Partial<Record<MeasureId, Reading[]>> = {};
  for (const { id, reading } of read) (readings[id] ??= []).push(reading);
  return { readings, questions: read.flatMap(({ question }) => (question === null ? [] : [question])) };
}
