import { describe, expect, it } from 'vitest';
import { sample } from '../src/samples/index.ts';
import { edgeHalf, edgesOf, halfOf, hasRole, leaders, seamRole, seamsOfRole } from '../src/garment/index.ts';

const bodice = sample('stage-bodice');
const tee = sample('knit-tee');
const trousers = sample('work-trousers');
const seam = (pattern: typeof bodice, id: string) => pattern.seams.find((s) => s.id === id)!;

describe('an edge', () => {
  it('is its role and what it is besides', () => {
    const wrap = { role: 'centre', also: 'opening' } as const;
    expect([hasRole(wrap, 'centre'), hasRole(wrap, 'opening'), hasRole(wrap, 'side')]).toEqual([
      true,
      true,
      false,
    ]);
  });

  it('that is the outside of a leg is a side, but no side is the outside of a leg', () => {
    expect(hasRole({ role: 'outseam' }, 'side')).toBe(true);
    expect(hasRole({ role: 'side' }, 'outseam')).toBe(false);
  });

  it('without a role is nothing that is asked for', () => {
    expect(hasRole({}, 'side')).toBe(false);
  });

  it('is of the half of its piece, else of its own', () => {
    expect(edgeHalf({ half: 'back' }, { half: 'front' })).toBe('back');
    expect(edgeHalf({ half: 'arm' }, { half: 'front' })).toBe('front');
    expect(halfOf({ half: 'both' })).toBeUndefined();
  });
});

describe('a seam', () => {
  it('is what its edges are', () => {
    expect(seamRole(bodice, seam(bodice, 'side'))).toBe('side');
    expect(seamRole(bodice, seam(bodice, 'shoulder'))).toBe('shoulder');
    expect(seamRole(trousers, seam(trousers, 'side'))).toBe('side');
    expect(seamRole(trousers, seam(trousers, 'crotch-back'))).toBe('rise');
  });

  it('of a cap and an armhole is the armhole seam', () => {
    expect(seamRole(bodice, seam(bodice, 'armhole'))).toBe('armhole');
  });

  it('of a band or collar is what that is attached to', () => {
    expect(seamRole(tee, seam(tee, 'neck'))).toBe('neck');
    expect(seamRole(bodice, seam(bodice, 'neck'))).toBe('neck');
    expect(seamRole(trousers, seam(trousers, 'waist'))).toBe('waist');
  });

  it('of a dart, and one with an edge that is unknown, is none', () => {
    expect(seamRole(trousers, seam(trousers, 'front-dart'))).toBeUndefined();
    const unknown = {
      ...bodice,
      pieces: bodice.pieces.map((p) => ({
        ...p,
        edges: p.edges.map(({ role, ...e }) => (p.id === 'back-side' ? e : { ...e, ...(role && { role }) })),
      })),
    };
    expect(seamRole(unknown, seam(bodice, 'side'))).toBeUndefined();
    expect(
      edgesOf(
        unknown.pieces.find((p) => p.id === 'back-side')!,
        'side',
      ),
    ).toEqual([]);
  });

  it('of several of one role comes from the centre out, whatever is sewn first', () => {
    // The side panels cut in two: the outer panel seams are sewn first, the inner ones lie nearer the centre.
    const four = {
      pieces: [0, 1, 2].map((n) => ({
        ...bodice.pieces[1]!,
        id: `p${n}`,
        edges: [
          {
            ...bodice.pieces[1]!.edges[0]!,
            id: 'in',
            role: n === 0 ? ('centre' as const) : ('panel' as const),
          },
          { ...bodice.pieces[1]!.edges[1]!, id: 'out', role: 'panel' as const },
        ],
      })),
      seams: [1, 0].map((n) => ({
        ...seam(bodice, 'side'),
        id: `s${n}`,
        order: 5 - n,
        a: [{ piece: `p${n}`, edge: 'out' }],
        b: [{ piece: `p${n + 1}`, edge: 'in' }],
      })),
    };
    expect(seamsOfRole(four, 'panel').map((s) => s.id)).toEqual(['s0', 's1']);
  });
});

describe('the leading pieces', () => {
  it('are those that follow no other and are no band', () => {
    expect(leaders(tee).map((p) => p.id)).toEqual(['front', 'back', 'sleeve']);
  });
});
