import { readLength } from '../garment/index.ts';

/** Cells of a row as it is copied from a spreadsheet, typed with semicolons, or parted by wide or single spaces; a comma parts only beside a space. */
const PARTS = [/\t/, /;/, /,\s+/, /\s{2,}/, /\s+(?!\d+\/)/];

/**
 * Figures of one pasted row, mm; null in place of one that is empty or a dash. A name before them is left out.
 * Null where it is not a row of figures: a single one is pasted as text, and what is not understood is not guessed at.
 */
export function pastedFigures(text: string, unit: 'in' | 'cm'): readonly (number | null)[] | null {
  const [line, ...more] = text.trim().split(/\r\n|\n|\r/);
  if (line === undefined || more.length > 0) return null;
  for (const part of PARTS) {
    const cells = line.split(part).map((cell) => cell.trim());
    if (cells.length < 2) continue;
    const named = /^\p{L}/u.test(cells[0]!) ? cells.slice(1) : cells;
    const read = named.map((cell) => (/^[-–—]?$/.test(cell) ? null : readLength(cell, unit)));
    const mm = read.flatMap((one) => (one === null ? [null] : one.kind === 'length' ? [one.mm] : []));
    if (mm.length === cells.length - (named === cells ? 0 : 1)) return mm;
  }
  return null;
}
