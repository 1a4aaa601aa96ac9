import type { Box } from '../../../geometry/index.ts';
import { knownLetter } from './known-shape.ts';
import type { KnownLetter } from './known-shape.ts';
import type { DrawnLetter } from './letter.ts';
import { quarterTurned, shapeOf, shapeText } from './shape.ts';
import { turnedBox } from './word.ts';
import type { DrawnWord } from './word.ts';

/** A word all of whose letters were known at one turn. */
export interface ReadWord {
  readonly word: DrawnWord;
  /** Quarter turns counter-clockwise from level. */
  readonly quarters: number;
  readonly text: string;
  /** Letters that nothing else is drawn like. */
  readonly certain: number;
  /** On the sheet turned clockwise by so many quarters, where it stands upright. */
  readonly box: Box;
}

/** With more different shapes than these on a sheet they are no letters. */
const MOST_SHAPES = 3000;

/** Reads words at one of their turns, null where a letter is not known for sure. What repeats is looked at once. */
export function wordReader(): (word: DrawnWord, quarters: number) => ReadWord | null {
  const known = new Map<string, KnownLetter | null>();
  const letterAt = (letter: DrawnLetter, quarters: number): KnownLetter | null => {
    const shape = shapeOf(letter.lines.map((line) => line.map((point) => quarterTurned(point, quarters))));
    const key = `${letter.rings} ${shapeText(shape)}`;
    let found = known.get(key);
    if (found === undefined) {
      if (known.size >= MOST_SHAPES) return null;
      found = knownLetter(shape, letter.rings);
      known.set(key, found);
    }
    return found;
  };
  return (word, quarters) => {
    const letters = quarters < 2 ? word.letters : word.letters.toReversed();
    let text = '';
    let certain = 0;
    for (const letter of letters) {
      const one = letterAt(letter, quarters);
      if (!one) return null;
      text += one.char;
      if (!one.doubtful) certain++;
    }
    const boxes = letters.map(({ box }) => turnedBox(box, quarters));
    return {
      word,
      quarters,
      text,
      certain,
      box: {
        minX: boxes[0]!.minX,
        maxX: boxes.at(-1)!.maxX,
        minY: Math.min(...boxes.map((box) => box.minY)),
        maxY: Math.max(...boxes.map((box) => box.maxY)),
      },
    };
  };
}
