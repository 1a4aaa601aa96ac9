// Pieces are made up; what counts as sure (0.8) is the limit the design gives.
import { called, t } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { doubtsOf, withDoubtAnswer } from './doubts.ts';
import type { FoundEdge, FoundPiece } from './read-worker.ts';

const edge = (id: string, role: FoundEdge['found']['role'], confidence: number): FoundEdge => ({
  id,
  name: id,
  kind: 'seam',
  worn: [],
  found: { confidence, because: t`why ${called(id)}`, otherwise: [], ...(role ? { role } : {}) },
});
const piece = (
  id: string,
  found: Partial<FoundPiece['found']>,
  edges: readonly FoundEdge[] = [],
): FoundPiece => ({
  id,
  name: id,
  words: [],
  evidence: t``,
  paths: [],
  follows: false,
  found: { confidence: 1, because: t`why`, otherwise: [], ...found },
  edges,
});
const questions = (pieces: readonly FoundPiece[], said = {}) =>
  doubtsOf(pieces, said).map(({ question }) => question);

const front = (edges: readonly FoundEdge[], confidence = 1) =>
  piece('Front', { role: 'front', half: 'front', confidence }, edges);

describe('what is asked', () => {
  it('is nothing where all is sure', () =>
    expect(doubtsOf([front([edge('a', 'side', 0.8)])], {})).toEqual([]));

  it('is what less sure edges are, the least sure first, with why', () => {
    const doubts = doubtsOf([front([edge('a', 'side', 0.79), edge('b', 'armhole', 0.4)])], {});
    expect(doubts.map(({ question }) => question)).toEqual([
      '“Front”: is this the armhole?',
      '“Front”: is this the side seam?',
    ]);
    expect(doubts[0]!.evidence).toEqual(t`why ${called('b')}`);
  });

  it('is what a piece is before its edges, which wait for it', () => {
    const pieces = [
      front([edge('a', 'side', 0.5)]),
      piece('Back', { role: 'back', half: 'back', confidence: 0.5 }, [edge('b', 'side', 0.5)]),
    ];
    expect(questions(pieces)).toEqual(['Is “Back” the back?', '“Front”: is this the side seam?']);
  });

  it('is openly what a thing is where nothing was thought of it', () => {
    expect(questions([piece('X', { confidence: 0 })])).toEqual(['What is “X”?']);
    expect(questions([front([edge('a', undefined, 0)])])).toEqual(['“Front”: what is this edge?']);
  });

  it('is nothing of what repeats another piece, is left out, lies on a fold, or is worn nowhere of its own', () => {
    const unsure = [edge('a', 'side', 0.1)];
    expect(questions([{ ...front(unsure), follows: true }])).toEqual([]);
    expect(questions([front(unsure)], { Front: { leaveOut: true } })).toEqual([]);
    expect(questions([front([{ ...unsure[0]!, kind: 'fold' }])])).toEqual([]);
    expect(questions([piece('P', { role: 'pocket', half: 'none' }, unsure)])).toEqual([]);
  });
});

describe('answers', () => {
  it('are what it is thought to be, what else it may be, then what is usual, each once', () => {
    const unsure: FoundEdge = {
      ...edge('a', 'outer', 0.5),
      found: { role: 'outer', confidence: 0.5, because: null, otherwise: [{ role: 'attached' }] },
    };
    const band = piece('Band', { role: 'waistband', half: 'both' }, [unsure]);
    expect(doubtsOf([band], {})[0]!.answers.map((one) => one.role)).toEqual(['outer', 'attached', 'end']);
  });

  it('say front or back where the edge does', () => {
    const cap: FoundEdge = {
      ...edge('a', 'cap', 0.5),
      found: { role: 'cap', half: 'back', confidence: 0.5, because: null, otherwise: [] },
    };
    const sleeve = piece('Sleeve', { role: 'sleeve', half: 'arm' }, [cap]);
    expect(doubtsOf([sleeve], {})[0]!.question).toBe('“Sleeve”: is this the sleeve cap behind?');
  });

  it('become corrections beside what was said before, and left open they are asked no more', () => {
    const pieces = [front([edge('a', 'side', 0.5), edge('b', 'hem', 0.6)])];
    const [first] = doubtsOf(pieces, {});
    const said = withDoubtAnswer({ Front: { name: 'Vorderteil' } }, first!, first!.answers[0]!);
    expect(said).toEqual({ Front: { name: 'Vorderteil', edges: { a: { role: 'side' } } } });
    const open = withDoubtAnswer(said, doubtsOf(pieces, said)[1]!, null);
    expect(open['Front']!.edges).toEqual({ a: { role: 'side' }, b: { open: true } });
    expect(questions(pieces, open)).toEqual(['“Front”: is this the side seam?']);
  });
});
