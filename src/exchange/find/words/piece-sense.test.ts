// The words are those of piece-word-table.ts, from memory; here: that they are heard with accents, in compounds and plurals.
import { describe, expect, it } from 'vitest';
import { languageOf, piecesSense } from './piece-sense.ts';
import type { PieceSense } from './piece-word-table.ts';

const heard = (name: string): PieceSense[] =>
  piecesSense([name], languageOf([name]))
    .map((one) => one.sense)
    .toSorted();

describe('words on pieces', () => {
  it.each([
    ['Side front', ['front', 'side']],
    ['Vorderteil', ['front']],
    ['Rückenteil', ['back']],
    ['Seitliches Vorderteil', ['front', 'side']],
    ['Ärmel', ['sleeve']],
    ['Rockvorderteil, Futter', ['front', 'lining', 'skirt']],
    ['Devants', ['front']],
    ['manche', ['sleeve']],
    ['delantero', ['front']],
    ['espalda', ['back']],
    ['davanti', ['front']],
    ['voorpand', ['front']],
    ['Achterpand', ['back']],
    ['cós', ['waistband']],
    ['framstycke', ['front']],
    ['przód', ['front']],
    ['rękaw', ['sleeve']],
  ] as const)('%s', (name, senses) => {
    expect(heard(name)).toEqual(senses);
  });

  it('are taken in the one language that knows most of the names', () => {
    expect(languageOf(['Col', 'Devant', 'Dos', 'Manche'])).toBe('fr');
    expect(languageOf(['Voorpand', 'Achterpand', 'Mouw', 'Band'])).toBe('nl');
    expect(languageOf(['1', '2', 'A'])).toBeNull();
  });

  it('say nothing inside other words', () => {
    expect(heard('Background')).toEqual([]);
    expect(heard('Dossier')).toEqual([]);
  });
});
