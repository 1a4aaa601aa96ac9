// What no corner shows: edges of our own trousers and skirt (invented), drawn without semantics and read back. The truth is the sample's own document.
import { renderPhrase, TELL_CM } from '../../garment/index.ts';
import { beforeAll, describe, expect, it } from 'vitest';
import { linePath, pathEnd, pathLength, pathStart } from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { Pattern } from '../../garment/index.ts';
import { sample } from '../../samples/index.ts';
import { patternSheet } from '../write/sheet.ts';
import type { Proposal, ProposedEdge, ProposedPiece } from './proposal.ts';
import { recognise } from './recognise.ts';

const trousers = sample('work-trousers');
const lengthsOf = (pattern: Pattern, piece: string, edge: string): number[] =>
  pattern.pieces
    .find((one) => one.id === piece)!
    .edges.find((one) => one.id === edge)!
    .path.map(pathLength);

describe('trousers drawn without semantics', () => {
  let proposal: Proposal;
  const pieceOf = (name: string): ProposedPiece => proposal.pieces.find((piece) => piece.name === name)!;
  const within = (edge: ProposedEdge, truth: readonly number[]): void =>
    truth.forEach((long, k) => expect(edge.lengths[k]!).toBeWithinMm(long, 0.5));

  beforeAll(() => {
    proposal = recognise(patternSheet(trousers, { semantics: false }).drawing);
  });

  it('have their fly cut off the crotch seam where its facing ends, and sewn to the facing', () => {
    const front = pieceOf('Trouser front');
    const fly = front.edges.find((edge) => edge.kind === 'opening')!;
    within(fly, lengthsOf(trousers, 'front', 'fly'));
    within(front.edges[front.edges.indexOf(fly) + 1]!, lengthsOf(trousers, 'front', 'crotch'));
    const facing = pieceOf('Fly facing');
    const seam = proposal.seams.find(
      (one) => one.rank === 1 && [...one.a, ...one.b].some((ref) => ref.piece === facing.id),
    )!;
    expect([...seam.a, ...seam.b]).toContainEqual({ piece: front.id, edge: fly.id });
    for (const name of ['Fly facing', 'Fly shield'])
      expect(proposal.followers.find((one) => one.piece === pieceOf(name).id)?.parent).toBe(front.id);
  });

  it('have the underlap of their waistband left free, at the end and of the length that its notches say', () => {
    const band = pieceOf('Waistband');
    const lap = band.edges.find((edge) => renderPhrase(edge.evidence, TELL_CM).startsWith('an underlap'))!;
    expect(lap.kind).toBe('free');
    within(lap, lengthsOf(trousers, 'waistband', 'underlap'));
    const sewn = band.edges[band.edges.indexOf(lap) + 1]!;
    within(sewn, lengthsOf(trousers, 'waistband', 'waist'));
    const waist = proposal.seams.find(
      (one) =>
        one.rank === 1 && [...one.a, ...one.b].some((ref) => ref.edge === sewn.id && ref.piece === band.id),
    )!;
    // The sample eases 6 mm of the trousers onto the band.
    for (const extra of waist.extra) expect(Math.abs(extra)).toBeWithinMm(6, 0.5);
  });

  it.each([
    ['Trouser front', 'front', 'side'],
    ['Trouser front', 'front', 'inseam'],
    ['Trouser back', 'back', 'side'],
  ])('%s: the notches of its %s %s come back, those on a level line too', (name, piece, edge) => {
    const truth = trousers.pieces.find((one) => one.id === piece)!.edges.find((one) => one.id === edge)!;
    const long = pathLength(truth.path[0]!);
    const found = pieceOf(name).edges.find((one) => Math.abs(one.lengths[0]! - long) < 0.5)!;
    expect(found.notches.length).toBe(truth.notches.length);
    truth.notches.forEach((notch, i) =>
      notch.at.forEach((at, k) =>
        expect((found.notches[i]!.at[k]! - at) * found.lengths[k]!).toBeWithinMm(0, 0.5),
      ),
    );
  });
});

/** The skirt, its band’s long edge bent by so much where the underlap ends, mm. */
function skirtBent(off: number): Pattern {
  const skirt = sample('a-line-skirt');
  const bent = ({ x, y }: Point): Point => ({ x, y: y + off });
  return {
    ...skirt,
    pieces: skirt.pieces.map((piece) =>
      piece.id === 'waistband'
        ? {
            ...piece,
            edges: piece.edges.map((edge) => ({
              ...edge,
              path: edge.path.map((path) => {
                if (edge.id === 'underlap') return linePath(pathStart(path), bent(pathEnd(path)));
                return edge.id === 'waist' ? linePath(bent(pathStart(path)), pathEnd(path)) : path;
              }),
            })),
          }
        : piece,
    ),
  };
}

describe('a skirt whose centre back is a fold with a triple notch', () => {
  it.each([
    ['straight', 0],
    ['straight as a traced line is', 0.2],
  ])('has the underlap of its waistband left free, drawn %s', (_, off) => {
    const { pieces } = recognise(patternSheet(skirtBent(off), { semantics: false }).drawing);
    const band = pieces.find((piece) => piece.name === 'Waistband')!;
    const lap = band.edges.find((edge) => renderPhrase(edge.evidence, TELL_CM).startsWith('an underlap'))!;
    for (const long of lap.lengths) expect(long).toBeWithinMm(30, 0.5);
  });
});

describe('a patch pocket', () => {
  it('is sewn to no edge', () => {
    const { pieces, seams } = recognise(patternSheet(sample('a-line-skirt'), { semantics: false }).drawing);
    const pocket = pieces.find((piece) => piece.name === 'Patch pocket')!;
    expect(seams.flatMap((seam) => [...seam.a, ...seam.b]).filter((ref) => ref.piece === pocket.id)).toEqual(
      [],
    );
  });
});
