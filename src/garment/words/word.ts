import type { Part } from './phrase.ts';

/** A word of one of the program's own tables. @param of the table @param key its row @param text the row in English */
export const word = (of: string, key: string, text: string): Part & object => ({ word: text, of, key });

/** A word that is its own key: an id in plain words, `side-front` said as `side front`. */
export const keyWord = (of: string, key: string): Part & object => word(of, key, key.replaceAll('-', ' '));
