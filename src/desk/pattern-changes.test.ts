import { describe, expect, it } from 'vitest';
import { readPattern, renderPhrase, TELL_CM, writePattern, type Pattern } from '../garment/index.ts';
import { sample } from '../samples/index.ts';
import { moveLevel } from './edit-levels.ts';
import { dropSeam, putCell, putPiece } from './edit-pattern.ts';
import { patternChanges } from './pattern-changes.ts';

const skirt = sample('a-line-skirt');
const piece = skirt.pieces[0]!;
const said = (now: Pattern): string[] => patternChanges(skirt, now).map((one) => renderPhrase(one, TELL_CM));

describe('what is different in a pattern against an earlier copy', () => {
  it('is nothing in the same pattern, read back from its text', () => {
    expect(said(readPattern(writePattern(skirt)))).toEqual([]);
  });

  it('names the levels that moved, and nothing else', () => {
    expect(said(moveLevel(skirt, piece.id, 'hip', -10))).toEqual(['Level lines run elsewhere: hip.']);
  });

  it('names the table, pieces and seams', () => {
    expect(said(putCell(skirt, 'body', 'hip-girth', 0, 900))).toEqual([
      'The size table says something else.',
    ]);
    expect(said(putPiece(skirt, piece.id, { cloth: 'contrast' }))).toEqual([
      `Something else is said of ${piece.name}.`,
    ]);
    expect(said(dropSeam(skirt, skirt.seams[0]!.id))).toEqual([
      'Other edges are sewn together, or in another way.',
    ]);
    expect(said({ ...skirt, wearer: 'man' })).toEqual(['What it is, or what it is for, is said otherwise.']);
  });
});
