import { PIECE_WORDS } from './piece-word-table.ts';
import type { Language, PieceSense } from './piece-word-table.ts';
import { plainWords } from './plain.ts';

/** Plain words parted by single spaces. */
const partedWords = (text: string): string =>
  plainWords(text)
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** Endings of plurals that languages share. */
const PLURAL = '(?:s|n|en|er|r|e|i|es)?';

const SENSES: readonly {
  readonly sense: PieceSense;
  readonly language: Language;
  readonly pattern: RegExp;
}[] = (Object.keys(PIECE_WORDS) as PieceSense[]).flatMap((sense) =>
  (Object.keys(PIECE_WORDS[sense]) as Language[]).map((language) => ({
    sense,
    language,
    pattern: new RegExp(
      PIECE_WORDS[sense][language]
        .split(' ')
        .map((word) => {
          const letters = word.replaceAll(/[*+]/g, '').replaceAll('-', ' ');
          const open = word.endsWith('*') ? '\\p{L}*' : word.endsWith('+') ? '\\p{L}+' : PLURAL;
          return `(?<![\\p{L}])${word.startsWith('*') ? '\\p{L}*?' : ''}${letters}${open}(?![\\p{L}])`;
        })
        .join('|'),
      'u',
    ),
  })),
);

/** What a piece's name says, and the word that says it. */
export interface Heard {
  readonly sense: PieceSense;
  readonly word: string;
  readonly language: Language;
}

/**
 * What the words on a piece say it is. One language is taken for all of them: the one that knows the most, as `fond` or `col` mean nothing in
 * another.
 */
export function piecesSense(texts: readonly string[], language: Language | null): Heard[] {
  const text = texts.map(partedWords).join(' ; ');
  const heard = SENSES.flatMap((one) => {
    if (language && one.language !== language) return [];
    const found = one.pattern.exec(text);
    return found ? [{ sense: one.sense, word: found[0], language: one.language }] : [];
  });
  return language
    ? heard
    : heard.filter((one, i) => heard.findIndex((other) => other.sense === one.sense) === i);
}

/** The language that most of the names are in; null where none knows any. English where two know as many. */
export function languageOf(names: readonly string[]): Language | null {
  const count = new Map<Language, number>();
  for (const name of names) {
    const text = partedWords(name);
    for (const one of SENSES)
      if (one.pattern.test(text)) count.set(one.language, (count.get(one.language) ?? 0) + 1);
  }
  let best: Language | null = null;
  for (const [language, many] of count) if (best === null || many > count.get(best)!) best = language;
  return best;
}
