// The A-line skirt as it is read, one edge of one of its seams taken to be cut in two.
import { describe, expect, it } from 'vitest';
import { sample } from '../../samples/index.ts';
import { recognise } from '../find/recognise.ts';
import { patternSheet } from '../write/sheet.ts';
import { withCuts } from './cut-chain.ts';

const proposal = recognise(patternSheet(sample('a-line-skirt'), { semantics: false }).drawing);
const seam = proposal.seams.find(({ rank, a, b }) => rank === 1 && a[0]!.piece !== b[0]!.piece)!;
const { piece, edge } = seam.a[0]!;
const cuts = new Map([[`${piece} ${edge}`, ['first', 'second'] as const]]);
const after = (backwards: boolean, said = {}) =>
  withCuts(
    { ...proposal, seams: [{ ...seam, a: [{ piece, edge, ...(backwards ? { backwards } : {}) }] }] },
    said,
    proposal.pieces,
    cuts,
  );

describe('what names an edge that was cut in two', () => {
  it('names both its parts, in the order in which the seam walks them', () => {
    const walked = (backwards: boolean) => after(backwards).proposal.seams[0]!.a.map((ref) => ref.edge);
    expect(walked(false)).toEqual(['first', 'second']);
    expect(walked(true)).toEqual(['second', 'first']);
  });

  it('leaves the other side of the seam alone', () =>
    expect(after(false).proposal.seams[0]!.b).toEqual(seam.b));

  it('what a person said of it holds for both parts, but not which half it is', () => {
    const said = {
      pieces: { [piece]: { edges: { [edge]: { role: 'cap', half: 'front', allowance: 12 } } } },
    };
    expect(after(false, said).said.pieces![piece]!.edges).toEqual({
      first: { role: 'cap', allowance: 12 },
      second: { role: 'cap', allowance: 12 },
    });
  });

  it('is as it was where nothing was cut', () =>
    expect(withCuts(proposal, {}, proposal.pieces, new Map()).proposal).toBe(proposal));
});
