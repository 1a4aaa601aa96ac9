import { sizeInWords } from '../words/label-words.ts';
import { isProgression } from './progression.ts';
import type { ReadWord } from './read-word.ts';

/** Names of sizes in one row or column are no further apart than this, mm. */
const NEXT_MM = 40;
/** They stand level, or flush on a side, within this of a height … */
const LEVEL = 0.5;
/** … and are as high as one another by this (old figures differ). */
const ALIKE = 0.6;
/** This share of their letters nothing else is drawn like. */
const CERTAIN = 0.5;
/** Among more words than these nobody can be sure. */
const MOST = 600;

const highOf = ({ box }: ReadWord): number => box.maxY - box.minY;

/** Rows and columns of exactly `count` names of sizes that go by equal steps, all read at one turn; each in the order in which it stands. */
export function sizeRows(words: readonly ReadWord[], count: number): ReadWord[][] {
  const names = words.filter(({ text }) => sizeInWords(text) === text);
  if (count < 2 || names.length > MOST) return [];
  const found = new Map<string, ReadWord[]>();
  const index = new Map(names.map((word, i) => [word, i]));
  for (const first of names)
    for (const along of ['x', 'y'] as const) {
      const row = runThrough(first, names, along);
      const letters = row.reduce((sum, { text }) => sum + text.length, 0);
      const certain = row.reduce((sum, one) => sum + one.certain, 0);
      if (row.length === count && isProgression(row.map(({ text }) => text)) && certain >= CERTAIN * letters)
        found.set(row.map((word) => index.get(word)).join(' '), row);
    }
  return [...found.values()];
}

/** All that stand in a line with the first, none too far from the next. */
function runThrough(first: ReadWord, names: readonly ReadWord[], along: 'x' | 'y'): ReadWord[] {
  const high = highOf(first);
  const flush = ({ box }: ReadWord): boolean => {
    const own = first.box;
    const off =
      along === 'x'
        ? [(box.minY + box.maxY - own.minY - own.maxY) / 2]
        : [box.minX - own.minX, box.maxX - own.maxX, (box.minX + box.maxX - own.minX - own.maxX) / 2];
    return off.some((by) => Math.abs(by) < LEVEL * high);
  };
  const at = ({ box }: ReadWord): number => (along === 'x' ? box.minX : box.minY);
  const row = names
    .filter((word) => {
      const its = highOf(word);
      return (
        word.quarters === first.quarters && Math.min(its, high) >= ALIKE * Math.max(its, high) && flush(word)
      );
    })
    .toSorted((a, b) => at(a) - at(b));
  const here = row.indexOf(first);
  const breaks = row.flatMap((word, i) => (i > 0 && at(word) - at(row[i - 1]!) > NEXT_MM ? [i] : []));
  const from = breaks.findLast((i) => i <= here) ?? 0;
  const to = breaks.find((i) => i > here) ?? row.length;
  return row.slice(from, to);
}
