import { InputError, parseChartCsv, type SizeChart } from '../../garment/index.ts';

/** Words that say a row is of the finished garment; what is left of the name is the level. */
const FINISHED = /\b(finished|garment|of the garment)\b/gi;
/** A unit said in a row's own name: `Bust (cm)`, `Hip, in`. */
const OWN_UNIT = /[\s,(]+(in|inch|inches|cm|mm)\)?\s*$/i;
/** Columns that the full form has between a row's name and its figures: of what, and in which unit. */
const ADDED_COLUMNS = 2;

/**
 * Reads a size table as it stands on an envelope or in a spreadsheet: a line of size names, then a line for each measure, `Finished …` for
 * those of the garment. The full form with its own columns for kind and unit is read as it is.
 * @param unit of every row that does not say its own
 * @throws InputError with row and column, as they were typed, of everything that can't be read
 */
export function readPlainTable(text: string, unit: 'in' | 'cm'): SizeChart {
  const lines = text.split(/\r?\n/);
  const first = lines.findIndex((l) => l.trim() !== '');
  const mark = ['\t', ';', ','].find((m) => lines[first]?.includes(m)) ?? '\t';
  const cells = (line: string): string[] => line.split(mark).map((c) => c.trim());
  if (/^measure$/i.test(cells(lines[first] ?? '')[0] ?? '')) return parseChartCsv(text);
  const full = lines.map((line, i) => {
    if (line.trim() === '') return line;
    const [name = '', ...figures] = cells(line);
    if (i === first) return ['measure', 'kind', 'unit', ...figures].join('\t');
    const own = OWN_UNIT.exec(name)?.[1]?.toLowerCase();
    const bare = name.replace(OWN_UNIT, '');
    const kind = bare.search(FINISHED) >= 0 ? 'finished' : 'body';
    const measure = bare.replaceAll(FINISHED, ' ').replaceAll(/\s+/g, ' ').trim();
    return [measure, kind, own?.startsWith('inch') ? 'in' : (own ?? unit), ...figures].join('\t');
  });
  try {
    return parseChartCsv(full.join('\n'));
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const [problem, ...more] = error.problems.map((p) =>
      p.where.column === undefined
        ? p
        : { ...p, where: { ...p.where, column: Math.max(1, p.where.column - ADDED_COLUMNS) } },
    );
    throw new InputError(problem!, more);
  }
}
