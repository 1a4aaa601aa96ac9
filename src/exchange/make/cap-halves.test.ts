// The knit tee as it is read from its drawing; its cap is one line there. One tooth in front, two behind: common practice.
import { describe, expect, it } from 'vitest';
import { sample } from '../../samples/index.ts';
import { pathEnd, pathStart } from '../../geometry/index.ts';
import type { Proposal, ProposedNotch } from '../find/proposal.ts';
import { recognise } from '../find/recognise.ts';
import { patternSheet } from '../write/sheet.ts';
import { withCapHalves } from './cap-halves.ts';

const read = recognise(patternSheet(sample('knit-tee'), { semantics: false }).drawing);
const sleeveOf = ({ pieces }: Proposal) => pieces.find((piece) => piece.role === 'sleeve')!;
const capsOf = (proposal: Proposal) => sleeveOf(proposal).edges.filter((edge) => edge.role === 'cap');

/** The tee with the notches of its cap as given. */
const withNotches = (notches: (all: readonly ProposedNotch[]) => readonly ProposedNotch[]): Proposal => ({
  ...read,
  pieces: read.pieces.map((piece) =>
    piece === sleeveOf(read)
      ? {
          ...piece,
          edges: piece.edges.map((edge) =>
            edge.role === 'cap' ? { ...edge, notches: notches(edge.notches) } : edge,
          ),
        }
      : piece,
  ),
});

describe('a cap drawn as one line', () => {
  const cap = capsOf(read)[0]!;
  const { proposal } = withCapHalves(read, {});
  const halves = capsOf(proposal);

  it('is cut into a front and a back half that are as long together', () => {
    expect(capsOf(read).length).toBe(1);
    expect(halves.map((edge) => edge.half).toSorted()).toEqual(['back', 'front']);
    cap.lengths.forEach((long, k) =>
      expect(halves[0]!.lengths[k]! + halves[1]!.lengths[k]!).toBeCloseTo(long, 3),
    );
    expect(pathEnd(halves[0]!.paths[0]!)).toEqual(pathStart(halves[1]!.paths[0]!));
  });

  it('is cut at its shoulder notch, which stays on one half only', () => {
    const shoulder = halves.flatMap((edge) =>
      edge.notches.filter((notch) => notch.role === 'shoulder-point'),
    );
    expect(shoulder.length).toBe(1);
    for (const at of shoulder[0]!.at) expect(at).toBeLessThan(0.001);
  });

  it('has the underarms beside it told apart alike, and the armhole of its side sewn to each half', () => {
    const { edges } = sleeveOf(proposal);
    const first = edges.indexOf(halves[0]!);
    expect(edges.at(first - 1)).toMatchObject({ role: 'underarm', half: halves[0]!.half });
    const seam = proposal.seams.find(
      (one) =>
        one.rank === 1 &&
        [...one.a, ...one.b].some((ref) => ref.edge === halves[0]!.id && ref.piece === sleeveOf(read).id),
    )!;
    const [own, other] = seam.a[0]!.piece === sleeveOf(read).id ? [seam.a, seam.b] : [seam.b, seam.a];
    const halfOf = ({ piece, edge }: (typeof own)[number]) => {
      const on = proposal.pieces.find((one) => one.id === piece)!;
      return on.edges.find((one) => one.id === edge)!.half ?? on.half;
    };
    expect(own.map(halfOf)).toEqual(other.map(halfOf));
  });

  it('has its halves the other way about where the two teeth stand on the other side', () => {
    const turned = withNotches((all) => all.map((one) => ({ ...one, count: one.count === 2 ? 1 : 2 })));
    const before = halves.map((edge) => edge.half);
    expect(capsOf(withCapHalves(turned, {}).proposal).map((edge) => edge.half)).toEqual(before.toReversed());
  });

  it('without notches is cut at its top', () => {
    const [first] = capsOf(
      withCapHalves(
        withNotches(() => []),
        {},
      ).proposal,
    );
    first!.lengths.forEach((long, k) => expect(Math.abs(long - halves[0]!.lengths[k]!)).toBeLessThan(30));
  });

  it('has what was said of it said of both halves', () => {
    const sleeve = sleeveOf(read).id;
    const said = { pieces: { [sleeve]: { edges: { [cap.id]: { allowance: 9 } } } } };
    const edges = withCapHalves(read, said).said.pieces![sleeve]!.edges!;
    expect(Object.keys(edges).toSorted()).toEqual(halves.map((edge) => edge.id).toSorted());
  });
});
