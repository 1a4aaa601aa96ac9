import { describe, expect, it } from 'vitest';
import {
  cutWords,
  drawnSide,
  renderPhrase,
  sideOf,
  timesCut,
  TELL_CM,
  timesTurned,
  wornFromCut,
  wornOnce,
  wornPair,
  wornTimes,
  type Worn,
} from './index.ts';

const cut = (worn: readonly Worn[], kind: 'seam' | 'fold' = 'seam', cloth: 'shell' | 'lining' = 'shell') => ({
  worn,
  edges: [{ kind }],
  cloth,
});
const cutSaid = (piece: ReturnType<typeof cut>): string => renderPhrase(cutWords(piece), TELL_CM);
/** `left up`, in the order of the parts. */
const said = (worn: readonly Worn[]): string[] => worn.map((w) => `${w.side} ${w.face}`);

describe('parts that are worn', () => {
  it('are a left and a right of a pair, the drawn one as it is drawn', () => {
    expect(said(wornPair())).toEqual(['left up', 'right down']);
    expect(said(wornPair('right'))).toEqual(['right up', 'left down']);
  });

  it('of two pairs are one of either face on each side: the second lies inside the first', () => {
    const worn = wornPair('left', 2);
    for (const side of ['left', 'right'])
      expect(
        worn
          .filter((w) => w.side === side)
          .map((w) => w.face)
          .sort(),
      ).toEqual(['down', 'up']);
  });

  it('are counted once each, twice on a fold', () => {
    expect(timesCut(cut(wornPair()))).toBe(2);
    expect(timesCut(cut(wornTimes(2), 'fold'))).toBe(4);
    expect(timesTurned(cut(wornPair('right', 2)))).toBe(2);
  });

  it('have a side of their own only if it is the same for all', () => {
    expect(sideOf({ worn: wornTimes(2, 'left') })).toBe('left');
    expect(sideOf({ worn: wornPair() })).toBeUndefined();
    expect(sideOf({ worn: wornOnce() })).toBeUndefined();
  });

  it('tell the side that the outline is drawn for; at a fold its half does', () => {
    expect(drawnSide({ worn: wornPair('right') })).toBe('right');
    expect(drawnSide({ worn: wornOnce(), half: 'back' })).toBe('right');
    expect(drawnSide({ worn: wornOnce(), half: 'front' })).toBe('left');
  });

  it('come of what a piece says in print', () => {
    expect(wornFromCut({ count: 1, mirrored: false })).toEqual(wornOnce());
    expect(wornFromCut({ count: 1, mirrored: true })).toEqual(wornOnce());
    expect(wornFromCut({ count: 2, mirrored: true }, undefined, 'right')).toEqual(wornPair('right'));
    expect(wornFromCut({ count: 2, mirrored: false })).toEqual(wornTimes(2));
    expect(said(wornFromCut({ count: 3, mirrored: true }))).toEqual(['left up', 'right down', 'both up']);
    expect(said(wornFromCut({ count: 2, mirrored: true }, 'right'))).toEqual(['right up', 'right down']);
  });
});

describe('how a piece is cut, in words', () => {
  it('says how many, of what, and which way', () => {
    expect(cutSaid(cut(wornOnce()))).toBe('Cut 1 of the main cloth');
    expect(cutSaid(cut(wornOnce(), 'fold'))).toBe('Cut 1 on the fold of the main cloth');
    expect(cutSaid(cut(wornTimes(2), 'fold'))).toBe('Cut 2 on the fold of the main cloth');
    expect(cutSaid(cut(wornPair()))).toBe('Cut 2 of the main cloth, a mirrored pair');
    expect(cutSaid(cut(wornTimes(2)))).toBe('Cut 2 of the main cloth, alike');
    expect(cutSaid(cut(wornPair('left', 2), 'seam', 'lining'))).toBe(
      'Cut 4 of the lining, 2 of them mirrored',
    );
    expect(cutSaid(cut(wornOnce('left')))).toBe('Cut 1 of the main cloth, for the left side of the body');
  });
});
