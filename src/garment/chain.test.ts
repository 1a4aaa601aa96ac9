import { describe, expect, it } from 'vitest';
import { linePath } from '../geometry/index.ts';
import { chainLength, chainNotches, edgeAt, edgeName, missingEdges } from './chain.ts';
import { wornPair } from './worn.ts';
import { levelName } from './level-name.ts';
import { middleOf } from './size-middle.ts';
import type { DrawnPiece, Edge } from './piece.ts';

const edge = (
  id: string,
  name: string,
  to: readonly [number, number, number, number],
  notch?: number,
): Edge<'one'> => ({
  id,
  name,
  kind: 'seam',
  path: linePath({ x: to[0], y: to[1] }, { x: to[2], y: to[3] }),
  from: 'waist',
  crossings: [],
  allowance: 15,
  notches: notch === undefined ? [] : [{ id: 'balance', at: notch, count: 1 }],
});
/** A triangle of 30, 40 and 50 mm. */
const piece = (id: string): DrawnPiece => ({
  id,
  name: `Piece ${id}`,
  number: 1,
  cloth: 'shell',
  worn: wornPair(),
  edges: [
    edge('low', 'lower edge', [0, 0, 30, 0], 0.1),
    edge('side', 'side', [30, 0, 30, 40], 0.25),
    edge('slope', 'slope', [30, 40, 0, 0]),
  ],
  darts: [],
  lines: [],
  marks: [],
});
const garment = { pieces: [piece('a'), piece('b')], seams: [], followers: [], bands: [], levels: [] };

describe('a chain of edges', () => {
  it('is as long as its edges together, whichever way they are walked', () => {
    expect(
      chainLength(garment, [
        { piece: 'a', edge: 'side' },
        { piece: 'b', edge: 'slope', backwards: true },
      ]),
    ).toBeCloseTo(90, 9);
  });

  it('has its notches at walked lengths; of two of one name the first', () => {
    const walked = chainNotches(garment, [
      { piece: 'a', edge: 'side', backwards: true },
      { piece: 'b', edge: 'low' },
    ]);
    // Walked backwards a quarter from the start is three quarters of 40 mm.
    expect([...walked.keys()]).toEqual(['balance']);
    expect(walked.get('balance')).toBeCloseTo(30, 9);
  });

  it('gives one answer where an edge is missing: named to whoever asks first, a fault to whoever measures', () => {
    const chain = [
      { piece: 'a', edge: 'side' },
      { piece: 'a', edge: 'gone' },
      { piece: 'c', edge: 'side' },
    ];
    expect(edgeAt(garment, chain[1]!)).toBeUndefined();
    expect(missingEdges(garment, chain)).toEqual(chain.slice(1));
    expect(() => chainLength(garment, chain)).toThrow('no edge gone of a');
    expect(() => chainNotches(garment, chain)).toThrow('no edge gone of a');
  });

  it('names an edge for people, by its ids where the pattern does not know it', () => {
    expect(edgeName(garment, { piece: 'a', edge: 'low' })).toBe('Piece a, lower edge');
    expect(edgeName(garment, { piece: 'c', edge: 'low' })).toBe('c, low');
  });
});

describe('names and middles', () => {
  it('calls a level by its trade name, one of the pattern’s own by its id in words', () => {
    expect(levelName('high-hip')).toBe('high hip');
    expect(levelName('lower-thigh')).toBe('lower thigh');
  });

  it('takes the middle size, the upper of two', () => {
    expect([1, 2, 3, 10].map(middleOf)).toEqual([0, 1, 1, 5]);
  });
});
