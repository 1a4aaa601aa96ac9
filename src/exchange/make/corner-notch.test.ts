// A band 400 mm long on a front and a back whose edges meet at its middle; only what the rule looks at is there of the pieces.
import { describe, expect, it } from 'vitest';
import type { EdgeRole, NestedPiece, Seam } from '../../garment/index.ts';
import { linePath } from '../../geometry/index.ts';
import { cornerNotches } from './corner-notch.ts';

const MM = { waist: 200, neck: 200, side: 600, shoulder: 120, attached: 400, centre: 600 };
type Drawn = keyof typeof MM & EdgeRole;

const piece = (id: string, roles: readonly Drawn[], notches: readonly { at: number; role?: string }[] = []) =>
  ({
    id,
    edges: roles.map((role) => ({
      id: role,
      role,
      path: [linePath({ x: 0, y: 0 }, { x: MM[role], y: 0 })],
      notches: notches.map(({ at, ...own }, i) => ({ id: `n${i}`, count: 1, at: [at / MM[role]], ...own })),
    })),
  }) as unknown as NestedPiece;

/** What the notches of the band are for, those at so many mm from its start; the two pieces meet with edges of these roles. */
function said(ends: readonly [Drawn, Drawn], notches: Parameters<typeof piece>[2], sewn: Drawn = 'waist') {
  const pieces = [
    piece('front', [sewn, ends[0], 'centre']),
    piece('back', ['centre', ends[1], sewn]),
    piece('band', ['attached'], notches),
  ];
  const seam = {
    a: [{ piece: 'band', edge: 'attached' }],
    b: ['front', 'back'].map((id) => ({ piece: id, edge: sewn })),
  } as unknown as Seam;
  return cornerNotches(pieces, [seam])[2]!.edges[0]!.notches.map(({ role }) => role);
}

describe('a notch of a band where two pieces meet on the other side of its seam', () => {
  it('is for the side where two side seams end there', () =>
    expect(said(['side', 'side'], [{ at: 200 }])).toEqual(['side']));

  it('is for the shoulder point where two shoulder seams do', () =>
    expect(said(['shoulder', 'shoulder'], [{ at: 203 }], 'neck')).toEqual(['shoulder-point']));

  it('is for nothing known where unlike edges end there, or farther away', () => {
    expect(said(['side', 'shoulder'], [{ at: 200 }])).toEqual([undefined]);
    expect(said(['side', 'side'], [{ at: 206 }, { at: 40 }])).toEqual([undefined, undefined]);
  });

  it('keeps what it is said to be', () =>
    expect(said(['side', 'side'], [{ at: 200, role: 'zip-end' }])).toEqual(['zip-end']));
});
