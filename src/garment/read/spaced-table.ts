import { sheetProblem, type Cell, type Row } from './csv.ts';
import { InputError } from '../input-error.ts';

/** Figures, sizes and dashes stand apart by spaces: `Bust 34 36 1/2 38`. */
const PART = /\S+/g;
/** A fraction goes with the whole number before it. */
const FRACTION = /^\d+\/\d+["″]?$/;
const WHOLE = /^\d+$/;
/** Where a row's figures begin. */
const FIGURE = /^(?:[\d¼½¾⅛⅜⅝⅞]|[-–—]$)/;
const HEAD = /^\s*(sizes?)?\s*:?\s*/i;
const UNIT_OF_HEAD = /^\(?(?:in|ins|inch|inches|cm|mm|")\.?\)?$/i;

/** Whether nothing but spaces stands between the cells of a table: no tab, no semicolon, and a comma only inside a figure. */
export const isSpaced = (text: string): boolean =>
  !/[\t;]/.test(text) &&
  !/,(?!\d)|(?<!\d),/.test(text) &&
  /\S +\S/.test(text) &&
  !/^[^ ]*,[^ ]*,/m.test(text);

/** Reads such a table: cells as they are parted, rows counted as typed. @throws InputError where there is none */
export function readSpaced(text: string): readonly Row[] {
  const rows = text.split(/\r\n|\n|\r/).flatMap((line, i) => {
    if (line.trim() === '') return [];
    return [{ line, row: i + 1 }];
  });
  const [head, ...lines] = rows;
  if (!head) throw new InputError(sheetProblem('empty', { row: 1, column: 1 }, { what: 'table' }));
  return [headRow(head.line, head.row), ...lines.map(({ line, row }) => figureRow(line, row))];
}

const cells = (texts: readonly string[], row: number): Cell[] =>
  texts.map((text, i) => ({ text, row, column: i + 1 }));

/** `Size (in) 8 10 12`: the corner, then the sizes. */
function headRow(line: string, row: number): Row {
  const word = HEAD.exec(line)![0];
  const parts = line.slice(word.length).match(PART) ?? [];
  const unit = parts[0] !== undefined && UNIT_OF_HEAD.test(parts[0]) ? parts.shift()! : '';
  return cells([`${word.trim()} ${unit}`.trim(), ...parts], row);
}

/** A name of one word or more, then its figures. */
function figureRow(line: string, row: number): Row {
  const parts = line.match(PART)!;
  const from = parts.findIndex((part, i) => i > 0 && FIGURE.test(part));
  const name = parts.slice(0, from < 0 ? parts.length : from).join(' ');
  const figures: string[] = [];
  for (const part of from < 0 ? [] : parts.slice(from)) {
    const last = figures.at(-1);
    if (last !== undefined && FRACTION.test(part) && WHOLE.test(last))
      figures[figures.length - 1] = `${last} ${part}`;
    else figures.push(part);
  }
  return cells([name, ...figures], row);
}
