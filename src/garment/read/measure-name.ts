import { LEVELS } from '../level.ts';
import { MEASURE_IDS, type MeasureId } from '../measure/measure-id.ts';
import { MEASURE_TABLE } from '../measure/measure-table.ts';
import { WEARER_WORDS } from '../words/wearer-words.ts';
import type { Level } from '../piece.ts';

const slug = (text: string): string =>
  text
    .toLowerCase()
    .trim()
    .replace(/[\s_]+/g, '-')
    .replace(/^centre|^center/, 'centre');

function byName(): ReadonlyMap<string, MeasureId> {
  const names = new Map<string, MeasureId>();
  for (const m of MEASURE_TABLE)
    for (const name of [m.name, m.iso ?? '', ...m.us])
      if (name !== '' && !names.has(slug(name))) names.set(slug(name), m.id);
  for (const table of Object.values(WEARER_WORDS))
    for (const id of MEASURE_IDS) {
      const name = table['measure']?.[id];
      if (name !== undefined && !names.has(slug(name))) names.set(slug(name), id);
    }
  for (const id of MEASURE_IDS) names.set(id, id);
  return names;
}
const NAMES = byName();

/** The measure meant by a word in a file: its stable id, its plain, ISO or common US name, any case. Null when unknown. */
export function measureNamed(word: string): MeasureId | null {
  return NAMES.get(slug(word)) ?? null;
}

/** The level meant by a word in a file: a level's name, or the girth taken there (`bust` and `bust-girth` are the same level). */
export function levelNamed(word: string): Level | null {
  const wanted = slug(word);
  const named = LEVELS.find((l) => l.level === wanted);
  if (named !== undefined) return named.level;
  const girth = measureNamed(word);
  return (
    (girth !== null ? LEVELS.find((l) => l.girth === girth || l.orGirth === girth)?.level : undefined) ?? null
  );
}

/** Edits between two words (Levenshtein), for "did you mean". */
function edits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}

/** The known word nearest a misspelt one, or null when none is near. */
export function nearestWord(word: string, known: readonly string[]): string | null {
  const wanted = slug(word).slice(0, 40);
  const ranked = known
    .map((k) => ({ k, d: edits(wanted, k) }))
    .sort((a, b) => a.d - b.d || (a.k < b.k ? -1 : 1));
  const best = ranked[0];
  return best !== undefined && best.d <= Math.max(2, wanted.length / 3) ? best.k : null;
}
