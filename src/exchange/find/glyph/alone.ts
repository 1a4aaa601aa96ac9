import { nearBoxes } from '../near-box.ts';
import type { DrawnLetter } from './letter.ts';
import type { ReadWord } from './read-word.ts';
import { turnedBox } from './word.ts';

/** What stands this near on the same line belongs to the same words, in heights. */
const SPACE = 1.3;
/** What is larger by this is no letter of them. */
const LARGER = 2;
/** A line this flat and longer than a letter is high is the sample of a line, not a dash. */
const FLAT = 0.1;
const CELL_MM = 10;

/** Whether no other letters stand before or behind a word on its line, except those allowed. */
export function lineKeeper(
  letters: readonly DrawnLetter[],
): (read: ReadWord, allowed: ReadonlySet<DrawnLetter>) => boolean {
  const near = nearBoxes(
    letters.map(({ box }) => box),
    CELL_MM,
  );
  const index = new Map(letters.map((letter, i) => [letter, i]));
  return ({ word, quarters, box }, allowed) => {
    const high = box.maxY - box.minY;
    const own = new Set(word.letters);
    return !word.letters.some((letter) =>
      near(index.get(letter)!, SPACE * letter.size).some((k) => {
        const other = letters[k]!;
        if (own.has(other) || allowed.has(other)) return false;
        const its = turnedBox(other.box, quarters);
        const [wide, tall] = [its.maxX - its.minX, its.maxY - its.minY];
        if (tall > LARGER * high || (tall < FLAT * wide && wide > high)) return false;
        const gap = Math.max(its.minX - box.maxX, box.minX - its.maxX);
        return its.minY < box.maxY && its.maxY > box.minY && gap < SPACE * high;
      }),
    );
  };
}
