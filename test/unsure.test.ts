// The A-line skirt drawn without roles and without words, and a drawing of fixtures/role-drawings: what the reader is not sure of (below 0.8, docs/formats.md) nobody answers.
import { describe, expect, it } from 'vitest';
import { checkRoles } from '../src/check/index.ts';
import { answersFrom, asTaken, putEdge, putPiece } from '../src/desk/index.ts';
import { inDoubt, patternFrom, patternSheet, recognise, type Proposal } from '../src/exchange/index.ts';
import { readRoleDrawing } from '../src/exchange/role-drawings.test-case.ts';
import { readPattern, writePattern } from '../src/garment/index.ts';
import { findingSentence, make, newFitting } from '../src/pipeline/index.ts';
import { CAST, sample } from '../src/samples/index.ts';

const proposal = recognise({
  ...patternSheet(sample('a-line-skirt'), { semantics: false }).drawing,
  texts: [],
});
const { pattern } = patternFrom(proposal, { garment: 'skirt' });
/** What repeats another piece follows it and is not asked about. */
const leading = ({ pieces, followers }: Proposal) =>
  pieces.filter((piece) => !followers.some((one) => one.piece === piece.id));
const own = leading(proposal);
const named = (codes: readonly string[], findings: ReturnType<typeof checkRoles>) =>
  findings
    .filter(({ code }) => codes.includes(code))
    .map(({ code, where }) => [code, where.piece, where.edge]);

describe('a doubt that nobody answered', () => {
  const found = checkRoles(pattern.pieces);

  it('stands in the pattern: of every piece in doubt', () => {
    const unsure = own.filter(inDoubt);
    const pieces = found.filter(({ code }) => code === 'piece-unsure');
    expect(unsure.length).toBeGreaterThan(2);
    expect(pieces.map(({ values }) => values['piece'])).toEqual(unsure.map(({ name }) => name));
    expect(pieces.map(({ values }) => values['role'])).toEqual(unsure.map(({ role }) => role ?? null));
  });

  it('stands in the pattern: of every edge in doubt whose piece is not', async () => {
    const drawing = (await readRoleDrawing('yoke-skirt')).proposal;
    const edges = leading(drawing)
      .filter((piece) => !inDoubt(piece))
      .flatMap((piece) =>
        piece.edges
          .filter((edge) => edge.kind !== 'dart' && edge.kind !== 'fold' && inDoubt(edge))
          .map((edge) => `${piece.name} ${edge.name}`),
      );
    expect(edges.length).toBeGreaterThan(3);
    const told = checkRoles(patternFrom(drawing).pattern.pieces);
    expect(
      told.map(({ values }) => `${String(values['piece'])} ${String(values['edge'])}`).toSorted(),
    ).toEqual(edges.toSorted());
  });

  it('is kept in the document', () =>
    expect(checkRoles(readPattern(writePattern(pattern)).pieces)).toEqual(found));

  it('is among what is to settle of every fitting, at its place', () => {
    const { findings } = make(newFitting({ body: CAST[0]!, pattern, on: '2026-01-01' }));
    expect(named(['piece-unsure', 'edge-unsure'], [...findings])).toEqual(
      named(['piece-unsure', 'edge-unsure'], found),
    );
  });

  it('ends when somebody says what it is, and not before', () => {
    const piece = pattern.pieces.find((one) => one.unsure)!;
    const renamed = putPiece(pattern, piece.id, { name: 'Something' });
    expect(renamed.pieces.find((one) => one.id === piece.id)!.unsure).toBe(true);
    const said = putPiece(pattern, piece.id, { role: 'waistband' });
    expect(named(['piece-unsure'], checkRoles(said.pieces))).toEqual(
      named(['piece-unsure'], found).filter(([, id]) => id !== piece.id),
    );
    const edge = said.pieces.find((one) => one.id === piece.id)!.edges.find((one) => one.unsure)!;
    const after = putEdge(said, piece.id, edge.id, { role: 'attached' });
    expect(checkRoles(after.pieces).length).toBe(checkRoles(said.pieces).length - 1);
  });

  it('ends in a fitting as well when it is said there, or when what the page of the pattern says is taken over', () => {
    const fitting = newFitting({ body: CAST[0]!, pattern, on: '2026-01-01' });
    const doubts = (its: typeof pattern) =>
      named(['piece-unsure', 'edge-unsure'], [...make({ ...fitting, pattern: its }).findings]);
    const [known, other] = pattern.pieces.filter((one) => one.unsure && one.role);
    const saidOf = (id: string, codes: ReturnType<typeof doubts>) =>
      codes.filter(([code, where]) => code === 'piece-unsure' && where === id);
    expect(saidOf(known!.id, doubts(pattern))).toHaveLength(1);
    expect(saidOf(known!.id, doubts(asTaken(pattern, { piece: known!.id })))).toEqual([]);
    const piece = putPiece(pattern, other!.id, { role: 'waistband', half: 'both' });
    const edge = other!.edges.find((one) => one.unsure)!;
    const said = putEdge(piece, other!.id, edge.id, { role: 'attached' });
    const taken = answersFrom(pattern, said);
    expect(doubts(taken)).toEqual(doubts(said));
    expect(taken.pieces).toEqual(said.pieces);
    expect(answersFrom(taken, said)).toBe(taken);
    expect(answersFrom(taken, putPiece(said, other!.id, { role: 'front' }))).toBe(taken);
  });

  it('is none where the person answered while bringing it in, and stays where it was left open', () => {
    const [first, second] = own.filter(inDoubt);
    const answered = patternFrom(proposal, {
      garment: 'skirt',
      pieces: { [first!.id]: { role: 'front', half: 'front' }, [second!.id]: { open: true } },
    }).pattern;
    const by = (name: string) => answered.pieces.find((piece) => piece.name === name)!;
    expect(by(first!.name).unsure).toBeUndefined();
    expect(by(second!.name)).toMatchObject({ unsure: true });
    expect(by(second!.name).role).toBeUndefined();
  });

  it('says what it was taken for, or that nobody knows', () => {
    const say = (role: string | null) =>
      findingSentence(
        { ...found[0]!, code: 'edge-unsure', values: { piece: 'P', edge: 'e', role, half: 'front' } },
        { unit: 'cm' },
      );
    expect(say('cap')).toMatch(/^P: e was taken for the sleeve cap in front, but not surely/);
    expect(say(null)).toMatch(/^P: what the edge e is, the drawing does not show, and nobody has said\./);
  });
});

it('A sample, whose roles its maker wrote, bears no doubt', () =>
  expect(checkRoles(sample('a-line-skirt').pieces)).toEqual([]));
