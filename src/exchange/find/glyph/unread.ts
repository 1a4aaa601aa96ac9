import { looksLettered } from './known-shape.ts';
import type { DrawnLetter } from './letter.ts';
import { quarterTurned, shapeOf } from './shape.ts';
import type { DrawnWord } from './word.ts';

/** Of each word so many letters are looked at, of a sheet so many words. */
const LETTERS = 4;
const MOST_WORDS = 200;
/** A word is lettering if this share of them looks like letters: notches in a row do not. */
const SHARE = 0.5;

/** How many letters stand in words that were seen but not read; of the first two hundred words. */
export function unreadLetters(words: readonly DrawnWord[], read: ReadonlySet<DrawnLetter>): number {
  return words
    .filter(({ letters }) => letters.length > 1 && !letters.some((letter) => read.has(letter)))
    .slice(0, MOST_WORDS)
    .filter(({ letters, quarters }) => {
      const some = letters.slice(0, LETTERS);
      return quarters.some(
        (quarter) => some.filter((one) => lettered(one, quarter)).length >= SHARE * some.length,
      );
    })
    .reduce((sum, { letters }) => sum + letters.length, 0);
}

function lettered({ lines, rings }: DrawnLetter, quarters: number): boolean {
  return looksLettered(
    shapeOf(lines.map((line) => line.map((point) => quarterTurned(point, quarters)))),
    rings,
  );
}
