// Invented: a sample's drawing, one piece of it called otherwise.
import { describe, expect, it } from 'vitest';
import { sample } from '../samples/index.ts';
import { recognise } from './find/recognise.ts';
import { proposalSummary } from './summary.ts';
import { patternSheet } from './write/sheet.ts';

const skirt = sample('a-line-skirt');
const called = (name: string) =>
  proposalSummary(
    recognise(
      patternSheet(
        {
          ...skirt,
          pieces: skirt.pieces.map((piece, i) => (i === 0 ? { ...piece, name } : piece)),
        },
        { semantics: false },
      ).drawing,
    ),
  ).pieces.find((piece) => piece.name === name);

describe('what is said of a file that was read', () => {
  it.each([
    ['Jupe devant gauche', 'left'],
    ['Rockvorderteil rechts', 'right'],
    ['Jupe droite devant', undefined],
  ])('has the side that “%s” is worn on', (name, side) => {
    const piece = called(name);
    expect(piece).toBeDefined();
    expect(piece!.side).toBe(side);
  });
});
