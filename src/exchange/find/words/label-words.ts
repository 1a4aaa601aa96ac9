import { LABEL_WORDS, LEVEL_NAMES } from './label-table.ts';
import { plainWords } from './plain.ts';
import type { BodySide } from '../../../garment/index.ts';

export type LabelMeaning = keyof typeof LABEL_WORDS;

/** A whole word in any of the languages; letters may not go on before or after it. */
const anyOf = (words: readonly string[]): string => `(?<![a-z])(?:${words.join('|')})(?![a-z])`;
const of = (meaning: LabelMeaning): readonly string[] => Object.values(LABEL_WORDS[meaning]).flat();

/** Matches one of the words, spelt plainly, as a whole. */
export const wholeWord = (words: readonly string[]): RegExp => new RegExp(anyOf(words));

const MEANING = new Map(
  (Object.keys(LABEL_WORDS) as LabelMeaning[]).map((meaning) => [meaning, wholeWord(of(meaning))]),
);

/** Whether the words say so, in any of the languages. */
export const says = (meaning: LabelMeaning, text: string): boolean =>
  MEANING.get(meaning)!.test(plainWords(text));

const CUT = anyOf(of('cut'));
const COUNTS = [
  new RegExp(`${CUT}\\s*:?\\s*(\\d{1,2})(?![\\d.,]*\\s*(?:mm|cm|in))`),
  new RegExp(`(?<![\\d.,])(\\d{1,2})\\s*[x×]?\\s*${CUT}`),
  new RegExp(`(?<![\\d.,])(\\d{1,2})\\s*(?:×|${anyOf(of('times'))})(?!\\s*\\d)`),
  /(?<![a-z\d]\s?)[x×]\s*(\d{1,2})(?![\d.,]|\s*(?:mm|cm|in))/,
];
const PAIRS = new RegExp(`(?<![\\d.,])(\\d{1,2})\\s*${anyOf(of('pair'))}`);

/** How many to cut as the words say, and the words; null where none say. `1 pair` is two. */
export function cutCount(text: string): { readonly count: number; readonly words: string } | null {
  const plain = plainWords(text);
  const pairs = PAIRS.exec(plain);
  if (pairs) return { count: 2 * Number(pairs[1]), words: pairs[0].trim() };
  for (const pattern of COUNTS) {
    const found = pattern.exec(plain);
    if (found && Number(found[1]) > 0) return { count: Number(found[1]), words: found[0].trim() };
  }
  return null;
}

const NO_SIDE = new RegExp(anyOf(of('noSide')), 'g');
const SIDE_ALONE = new RegExp(`^\\W*${anyOf([...of('left'), ...of('right')])}\\W*$`);

/** The one side of the body that words name; null where they name none or both. */
function sideNamed(text: string): BodySide | null {
  const plain = plainWords(text).replace(NO_SIDE, ' ');
  const [left, right] = [says('left', plain), says('right', plain)];
  return left === right ? null : left ? 'left' : 'right';
}

/**
 * Where a piece is worn, if on one side only: as its name says (`Left front`, `Vorderteil links`), else as its other words do (`links` alone,
 * `Cut 1, for the left side of the body`). Both or none is no side; the right side of the cloth is none of the body.
 */
export function sideInWords(name: string, lines: readonly string[]): BodySide | null {
  const body = lines.filter((line) => says('ofBody', line));
  const own = plainWords(name).replace(NO_SIDE, ' ');
  const labels = lines.filter((line) => cutCount(line) !== null || SIDE_ALONE.test(plainWords(line)));
  if (body.length > 0) return sideNamed(body.join('\n'));
  return says('left', own) || says('right', own) ? sideNamed(name) : sideNamed(labels.join('\n'));
}

const LEVELS = LEVEL_NAMES.map(([level, words]) => [level, wholeWord(words)] as const);
const ALONE = new RegExp(
  `^\\W*(?:${LEVEL_NAMES.flatMap(([, words]) => words).join('|')}|hem|saum|ourlet|bajo|orlo|zoom|bainha|fall|dol|arm|crotch)(?: ?(?:line|level|linie|lijn|linje|linia))?\\W*$`,
);

/** The level of the body that words beside a line name; null where they name none, a piece, the bust point, or a size (`Taille 38`). */
export function levelInWords(text: string): string | null {
  if (says('aPiece', text) || says('bustPoint', text) || sizeInWords(text) !== null) return null;
  const plain = plainWords(text);
  return LEVELS.find(([, words]) => words.test(plain))?.[0] ?? null;
}

/** Whether the words are the name of a level and nothing else. */
export const isLevelName = (text: string): boolean => ALONE.test(plainWords(text).trim());

const SIZE = '((?:\\d{1,3}(?:\\s?[/–-]\\s?\\d{1,3})?)|(?:x{0,4}s|m|x{0,5}l|[2-6]xl|[2-6]x))';
const SIZE_ALONE = new RegExp(`^(?:(?:${of('size').join('|')})\\.?)?[\\s:_-]*${SIZE}$`);

/** A size's name, with or without the word for it: `38`, `Größe 38`, `T. 40`, `XL`; in capitals, null where the words are something else. */
export function sizeInWords(text: string): string | null {
  const found = SIZE_ALONE.exec(plainWords(text).trim());
  return found ? found[1]!.replace(/\s/g, '').toUpperCase() : null;
}
