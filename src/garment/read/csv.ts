import { InputError, problemMaker } from '../input-error.ts';
import { SHEET_WORDS } from './words-table.ts';

/** One cell with its place as a spreadsheet counts it (from 1). */
export interface Cell {
  readonly text: string;
  readonly row: number;
  readonly column: number;
}
export type Row = readonly Cell[];

/** A typed table is small; past these bounds it is not one. Characters, rows, columns. */
const LONGEST_TEXT = 2_000_000;
const MOST_ROWS = 5_000;
const MOST_COLUMNS = 200;

type Delimiter = ',' | ';' | '\t';

/** Tab if the first line has one (pasted from a spreadsheet), else a semicolon (decimal-comma locales), else a comma. */
function delimiterOf(text: string): Delimiter {
  const start = text.search(/[^\r\n\s]/);
  const line = /[^\r\n]*/.exec(text.slice(Math.max(0, start)))![0].replace(/"(?:[^"]|"")*"/g, '');
  if (line.includes('\t')) return '\t';
  return line.includes(';') ? ';' : ',';
}

export const sheetProblem = problemMaker(SHEET_WORDS);

/** Reads one cell from `at`; returns its text and where it ends, or what is wrong. */
function readCell(
  text: string,
  at: number,
  delimiter: Delimiter,
): { text: string; end: number; lines: number } | { code: 'text-after-quote' | 'open-quote' } {
  if (text[at] !== '"') {
    let end = at;
    while (end < text.length && text[end] !== delimiter && text[end] !== '\n' && text[end] !== '\r') end++;
    return { text: text.slice(at, end).trim(), end, lines: 0 };
  }
  let out = '';
  let lines = 0;
  for (let i = at + 1; i < text.length; i++) {
    if (text[i] !== '"') {
      if (text[i] === '\n') lines++;
      out += text[i];
    } else if (text[i + 1] === '"') {
      out += '"';
      i++;
    } else {
      let end = i + 1;
      while (text[end] === ' ') end++;
      const next = text[end];
      const closed = next === undefined || next === delimiter || next === '\n' || next === '\r';
      return closed ? { text: out.trim(), end, lines } : { code: 'text-after-quote' };
    }
  }
  return { code: 'open-quote' };
}

/** A cell such as `40 1/2"` begins without a quote and may hold one; only a cell that begins with a quote is quoted. */
function readRows(text: string, delimiter: Delimiter): Row[] {
  const rows: Row[] = [];
  let cells: Cell[] = [];
  let row = 1;
  let at = 0;
  while (at <= text.length) {
    while (text[at] === ' ') at++;
    const cell = readCell(text, at, delimiter);
    if ('code' in cell) throw new InputError(sheetProblem(cell.code, { row, column: cells.length + 1 }));
    cells.push({ text: cell.text, row, column: cells.length + 1 });
    if (cells.length > MOST_COLUMNS)
      throw new InputError(sheetProblem('too-many-columns', { row }, { most: MOST_COLUMNS }));
    row += cell.lines;
    at = cell.end;
    if (text[at] === delimiter) {
      at++;
      continue;
    }
    if (cells.some((c) => c.text !== '')) rows.push(cells);
    if (rows.length > MOST_ROWS)
      throw new InputError(sheetProblem('too-many-rows', { row }, { most: MOST_ROWS }));
    cells = [];
    row++;
    if (at >= text.length) break;
    at += text[at] === '\r' && text[at + 1] === '\n' ? 2 : 1;
  }
  return rows;
}

/**
 * Splits a typed or pasted table into cells that know their place. Understands a byte-order mark, any line ending, quotes,
 * commas, semicolons (with decimal commas) and tabs; blank lines are skipped but counted.
 * @throws InputError with row and column for a broken quote, too much text, too many rows or columns, or an empty table
 */
export function readTable(source: string): readonly Row[] {
  if (source.length > LONGEST_TEXT)
    throw new InputError(sheetProblem('too-large', { row: 1 }, { most: LONGEST_TEXT }));
  const text = source.replace(/^\ufeff/, '');
  const nul = text.indexOf('\0');
  if (nul !== -1)
    throw new InputError(sheetProblem('not-text', { row: text.slice(0, nul).split('\n').length, column: 1 }));
  const rows = readRows(text, delimiterOf(text));
  if (rows.length === 0)
    throw new InputError(sheetProblem('empty', { row: 1, column: 1 }, { what: 'table' }));
  return rows;
}
