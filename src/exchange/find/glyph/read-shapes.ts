import type { Ring } from '../../../geometry/index.ts';
import type { DrawnText, Stroke } from '../../drawing/drawing.ts';
import { lineKeeper } from './alone.ts';
import { drawnLetters } from './letter.ts';
import { pieceNumbers } from './piece-number.ts';
import { wordReader } from './read-word.ts';
import type { ReadWord } from './read-word.ts';
import { quarterTurned } from './shape.ts';
import { sizeRows } from './size-row.ts';
import { unreadLetters } from './unread.ts';
import { drawnWords } from './word.ts';

/** What was read of letters that are drawn as shapes. */
export interface ShapesRead {
  /** Names of all sizes, in rows or columns. */
  readonly sizes: readonly DrawnText[];
  /** One number on each piece. */
  readonly numbers: readonly DrawnText[];
  /** The strokes of both. */
  readonly strokes: ReadonlySet<Stroke>;
  /** Letters in words that were seen but not read, as far as they were counted. */
  readonly unread: number;
}

/** Numbers and names of sizes have no more letters. */
const LETTERS = 4;
/** With more short words than these a sheet is prose. */
const MOST_WORDS = 6000;
/** Height of a digit in that of its letters' body. */
const DIGIT_BODY = 0.73;

/**
 * Reads what repeats among letters drawn as shapes or single strokes: names of sizes and numbers of pieces, level or by quarter turns. Only what
 * is sure in every letter, alone on its line, and borne out by its company becomes a text: as many names by equal steps as one of `counts`,
 * or the numbers 1 to n once on each of n pieces. `pieces`: their outlines in all sizes.
 */
export function readShapes(
  strokes: readonly Stroke[],
  pieces: readonly (readonly Ring[])[],
  counts: readonly number[],
): ShapesRead {
  const letters = drawnLetters(strokes);
  const all = drawnWords(letters);
  const short = all.filter((word) => word.letters.length <= LETTERS);
  if (short.length > MOST_WORDS)
    return { sizes: [], numbers: [], strokes: new Set(), unread: unreadLetters(all, new Set()) };
  const read = wordReader();
  const words = short.flatMap((word) => word.quarters.flatMap((quarters) => read(word, quarters) ?? []));
  const alone = lineKeeper(letters);
  const lettersOf = (row: readonly ReadWord[]) => new Set(row.flatMap(({ word }) => word.letters));
  const rows = counts
    .flatMap((count) => sizeRows(words, count))
    .filter((row) => {
      const own = lettersOf(row);
      return row.every((word) => alone(word, own));
    });
  const said = new Set(
    rows.map((row) =>
      row
        .map(({ text }) => text)
        .toSorted()
        .join(' '),
    ),
  );
  const sure = said.size === 1 ? rows : [];
  const taken = new Set(sure.flatMap((row) => [...lettersOf(row)]));
  const left = words.filter((word) => !word.word.letters.some((letter) => taken.has(letter)));
  const none = new Set<never>();
  const numbers = pieceNumbers(
    left.filter((word) => alone(word, none)),
    pieces,
  );
  const used = lettersOf([...sure.flat(), ...(numbers ?? [])]);
  return {
    sizes: sure.flatMap(textsOf),
    numbers: textsOf(numbers ?? []),
    strokes: new Set([...used].flatMap((letter) => letter.strokes)),
    unread: unreadLetters(all, used),
  };
}

/** Words of one row as texts of one size. */
function textsOf(row: readonly ReadWord[]): DrawnText[] {
  const highs = row.map(({ box }) => box.maxY - box.minY).toSorted((a, b) => a - b);
  return row.map(({ text, box, quarters, word }) => ({
    page: word.letters[0]!.strokes[0]!.page,
    text,
    at: quarterTurned({ x: box.minX, y: box.minY }, -quarters),
    size: highs[Math.floor(highs.length / 2)]! / DIGIT_BODY,
    angle: ((quarters > 2 ? quarters - 4 : quarters) * Math.PI) / 2,
    width: box.maxX - box.minX,
    layer: word.letters[0]!.strokes[0]!.layer,
    fromShape: true,
  }));
}
