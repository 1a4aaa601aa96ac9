import type { SizeChart } from '../chart.ts';
import { chartOfRows, type TableRead } from './chart-csv.ts';
import { readTable, type Cell, type Row } from './csv.ts';
import { ENVELOPE_NAMES } from './envelope-names.ts';
import { levelNamed, measureNamed } from './measure-name.ts';
import { isSpaced, readSpaced } from './spaced-table.ts';

/** Words that say a row is of the finished garment; what is left of the name is the level. */
const FINISHED = /\b(finished|garment|of the garment)\b/gi;
/** A unit said in a row's own name: `Bust (cm)`, `Hip, in.`, `Waist "`; in the corner it holds for all rows. */
const OWN_UNIT = /(?:^|[\s,(]+)(in|ins|inch|inches|cm|centimet(?:re|er)s?|mm|["″])\.?\)?\s*$/i;
const CENTIMETRES = /^centimet/i;

/** The unit that words end in, as the tables write it. */
function unitIn(words: string): string | undefined {
  const unit = OWN_UNIT.exec(words)?.[1];
  return unit === undefined ? undefined : CENTIMETRES.test(unit) ? 'cm' : unit === '″' ? 'in' : unit;
}

/** A cell that is not in the table, standing where its row's name stands, so that what is wrong with it is told there. */
const beside = (name: Cell, text: string): Cell => ({ ...name, text });

/** @param withUnits the cell after the name is the row's unit */
function fullRow(row: Row, unit: string | undefined, withUnits: boolean): Row {
  const [name, ...cells] = row as readonly [Cell, ...Cell[]];
  const told = withUnits ? cells[0] : undefined;
  const figures = withUnits ? cells.slice(1) : cells;
  const own = unitIn(name.text);
  const bare = name.text.replace(OWN_UNIT, '');
  const kind = bare.search(FINISHED) >= 0 ? 'finished' : 'body';
  const words = bare
    .replaceAll(FINISHED, ' ')
    .replace(/[:.]\s*$/, '')
    .replaceAll(/\s+/g, ' ')
    .trim();
  const measure = (kind === 'body' ? ENVELOPE_NAMES[words.toLowerCase()] : undefined) ?? singular(words);
  const ownUnit = told && told.text !== '' ? told : beside(name, own ?? unit ?? '');
  return [beside(name, measure), beside(name, kind), ownUnit, ...figures];
}

/** `Hips` is `hip`: the plural of a name that is known only without it. */
const singular = (words: string): string =>
  measureNamed(words) === null && levelNamed(words) === null && /s$/i.test(words)
    ? words.slice(0, -1)
    : words;

/**
 * Reads a size table as it stands on an envelope or in a spreadsheet: a line of size names, then a line for each measure, `Finished …` for
 * those of the garment; a column `unit` may stand between, or the unit in the corner. Cells are parted as in any table, or by spaces. The full form with
 * its own columns for kind and unit is read as it is. Rows that cannot be read are left out and told.
 * @param unit of every row that does not say its own; where it is not said either, the row is wrong
 * @throws InputError with row and column where there are no sizes, or no row can be read
 */
export function readPlainRows(
  text: string,
  unit?: 'in' | 'cm',
  waist: SizeChart['waist'] = 'unsaid',
): TableRead {
  const rows = isSpaced(text) ? readSpaced(text) : readTable(text);
  const [header, ...lines] = rows as readonly [Row, ...Row[]];
  if (/^measure$/i.test(header[0]!.text)) return chartOfRows(rows, waist);
  const [corner, ...others] = header as readonly [Cell, ...Cell[]];
  const withUnits = /^units?$/i.test(others[0]?.text ?? '');
  const sizes = withUnits ? others.slice(1) : others;
  const head = ['measure', 'kind', 'unit'].map((word) => beside(corner, word));
  const all = unitIn(corner.text) ?? unit;
  return chartOfRows([[...head, ...sizes], ...lines.map((line) => fullRow(line, all, withUnits))], waist);
}

/** The same, nothing left out. @throws InputError with row and column, as they were typed, of everything that can't be read */
export function readPlainTable(
  text: string,
  unit?: 'in' | 'cm',
  waist: SizeChart['waist'] = 'unsaid',
): SizeChart {
  const { chart, wrong } = readPlainRows(text, unit, waist);
  if (wrong) throw wrong;
  return chart;
}
