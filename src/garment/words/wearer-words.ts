import type { Wearer } from './tell.ts';

const CHEST = {
  measure: {
    'upper-bust-girth': 'upper chest',
    'bust-girth': 'chest',
    'under-bust-girth': 'under-chest',
    'bust-height': 'chest height',
    'bust-spread': 'chest spread',
    'front-bust-arc': 'front chest arc',
  },
  level: { 'upper-bust': 'upper chest', bust: 'chest', 'under-bust': 'under-chest' },
} as const;

type Table = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** Rows of the program's tables that are called otherwise on some bodies: the ids say bust, a man and a child have a chest. */
export const WEARER_WORDS: Readonly<Record<Wearer, Table>> = { woman: {}, man: CHEST, child: CHEST };

/** A word of a table as it is said of this wearer. @param usual what it is called of anybody else */
export const wearerWord = (of: string, key: string, usual: string, wearer: Wearer | undefined): string =>
  (wearer && WEARER_WORDS[wearer][of]?.[key]) ?? usual;
