import type { SizeChart } from '../chart.ts';
import { chartFromRows } from './chart-csv.ts';
import { readTable, type Cell, type Row } from './csv.ts';

/** Words that say a row is of the finished garment; what is left of the name is the level. */
const FINISHED = /\b(finished|garment|of the garment)\b/gi;
/** A unit said in a row's own name: `Bust (cm)`, `Hip, in.`. */
const OWN_UNIT = /[\s,(]+(in|ins|inch|inches|cm|mm)\.?\)?\s*$/i;

/** A cell that is not in the table, standing where its row's name stands, so that what is wrong with it is told there. */
const beside = (name: Cell, text: string): Cell => ({ ...name, text });

/** @param withUnits the cell after the name is the row's unit */
function fullRow(row: Row, unit: 'in' | 'cm' | undefined, withUnits: boolean): Row {
  const [name, ...cells] = row as readonly [Cell, ...Cell[]];
  const told = withUnits ? cells[0] : undefined;
  const figures = withUnits ? cells.slice(1) : cells;
  const own = OWN_UNIT.exec(name.text)?.[1];
  const bare = name.text.replace(OWN_UNIT, '');
  const kind = bare.search(FINISHED) >= 0 ? 'finished' : 'body';
  const measure = bare.replaceAll(FINISHED, ' ').replaceAll(/\s+/g, ' ').trim();
  const ownUnit = told && told.text !== '' ? told : beside(name, own ?? unit ?? '');
  return [beside(name, measure), beside(name, kind), ownUnit, ...figures];
}

/**
 * Reads a size table as it stands on an envelope or in a spreadsheet: a line of size names, then a line for each measure, `Finished …` for
 * those of the garment; a column `unit` may stand between. The full form with its own columns for kind and unit is read as it is.
 * @param unit of every row that does not say its own; where it is not said either, the row is wrong
 * @throws InputError with row and column, as they were typed, of everything that can't be read
 */
export function readPlainTable(
  text: string,
  unit?: 'in' | 'cm',
  waist: SizeChart['waist'] = 'unsaid',
): SizeChart {
  const rows = readTable(text);
  const [header, ...lines] = rows as readonly [Row, ...Row[]];
  if (/^measure$/i.test(header[0]!.text)) return chartFromRows(rows, waist);
  const [corner, ...others] = header as readonly [Cell, ...Cell[]];
  const withUnits = /^units?$/i.test(others[0]?.text ?? '');
  const sizes = withUnits ? others.slice(1) : others;
  const head = ['measure', 'kind', 'unit'].map((word) => beside(corner, word));
  return chartFromRows([[...head, ...sizes], ...lines.map((line) => fullRow(line, unit, withUnits))], waist);
}
