// A hem band 800 mm long round a front and a back, each cut on the fold; only what the rule looks at is there of the pieces. Three teeth mark the
// centre back (common practice).
import { describe, expect, it } from 'vitest';
import type { EdgeRef, NestedPiece, Seam } from '../../garment/index.ts';
import { linePath } from '../../geometry/index.ts';
import { roundChains } from './round-chain.ts';

const piece = (
  id: string,
  half: string,
  long: number,
  notches: readonly (readonly [number, number])[] = [],
) =>
  ({
    id,
    role: half,
    half,
    edges: [
      {
        id: 'hem',
        path: [linePath({ x: 0, y: 0 }, { x: long, y: 0 })],
        notches: notches.map(([mm, count], i) => ({ id: `n${i}`, count, at: [mm / long] })),
      },
    ],
  }) as unknown as NestedPiece;

const on = (id: string, backwards = false): EdgeRef => ({
  piece: id,
  edge: 'hem',
  ...(backwards ? { backwards } : {}),
});
/** From the centre front round the left side to the centre back and on. */
const ROUND = [on('front'), on('back', true), on('back'), on('front', true)];

/** Where the band's seam begins, once its notches have spoken. */
function begun(notches: readonly (readonly [number, number])[], chain: readonly EdgeRef[] = ROUND) {
  const pieces = [
    piece('front', 'front', 220),
    piece('back', 'back', 180),
    piece('band', 'both', 800, notches),
  ];
  const seam = { id: 's', name: 's', a: [on('band')], b: chain } as unknown as Seam;
  return roundChains(pieces, [seam])[0]!.b;
}

describe('a band sewn all round', () => {
  it('begins where its notches meet the corners of what it is sewn to', () => {
    // From a side round the back: side at 0, centre back at 180, the other side at 360, centre front at 580.
    expect(
      begun([
        [180, 3],
        [360, 1],
        [580, 1],
      ]),
    ).toEqual([on('back', true), on('back'), on('front', true), on('front')]);
  });

  it('has three teeth at the centre back, not at the centre front', () => {
    expect(begun([[400, 3]])).toEqual(ROUND);
    const other = [on('back'), on('front', true), on('front'), on('back', true)];
    expect(begun([[400, 3]], other)).not.toEqual(other);
  });

  it('begins as it did where no notch says better, or the notches are as near', () => {
    expect(begun([])).toEqual(ROUND);
    expect(begun([[222, 1]])).toEqual(ROUND);
  });

  it('is left as it is where the chain does not go round', () => {
    const open = [on('front'), on('back', true), on('back')];
    expect(begun([[100, 1]], open)).toEqual(open);
  });
});
