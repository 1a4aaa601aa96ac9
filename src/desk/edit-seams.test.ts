import { describe, expect, it } from 'vitest';
import { readPattern, type EdgeRef, type Pattern } from '../garment/index.ts';
import { pathLength } from '../geometry/index.ts';
import { sample } from '../samples/index.ts';
import { joinByLengths, joinEdges, putJoin } from './edit-seams.ts';

const skirt = sample('a-line-skirt');
const [front, back] = skirt.pieces as [Pattern['pieces'][number], Pattern['pieces'][number]];
const edge = (piece: typeof front, role: string): EdgeRef => ({
  piece: piece.id,
  edge: piece.edges.find((one) => one.role === role)!.id,
});
const [sideF, sideB, hem] = [edge(front, 'side'), edge(back, 'side'), edge(front, 'hem')];
const long = (p: Pattern, ref: EdgeRef): number =>
  pathLength(
    p.pieces.find((one) => one.id === ref.piece)!.edges.find((one) => one.id === ref.edge)!.path[0]!,
  );
const last = (p: Pattern) => p.seams.at(-1)!;

describe('edges that a person sews together', () => {
  it('are a plain seam where they are as long in every size', () => {
    const joined = joinEdges(skirt, 'side-again', sideF, { ...sideB, backwards: true }, 'side');
    expect(last(joined).join).toEqual({ kind: 'plain' });
    expect(joined.seams.length).toBe(skirt.seams.length);
  });

  it('are never plain where one is much longer: gathered, the longer one first, in the proportion of their lengths', () => {
    expect(joinByLengths(skirt, hem, sideB)).toBe('gathered');
    const seam = last(joinEdges(skirt, 'odd', hem, sideB, 'odd'));
    expect(long(skirt, seam.a[0]!)).toBeGreaterThan(long(skirt, seam.b[0]!));
    const { join } = seam;
    if (join.kind !== 'gathered') throw new Error('gathered');
    const ratio = long(skirt, seam.a[0]!) / long(skirt, seam.b[0]!);
    expect(ratio).toBeGreaterThanOrEqual(join.least);
    expect(ratio).toBeLessThanOrEqual(join.most);
  });

  it('may be said to be eased, gathered or plain afterwards', () => {
    const id = skirt.seams[0]!.id;
    const kinds = (['eased', 'gathered', 'plain'] as const).map((kind) => putJoin(skirt, id, kind));
    expect(kinds.map((p) => p.seams[0]!.join.kind)).toEqual(['eased', 'gathered', 'plain']);
    for (const p of kinds) expect(() => readPattern(p)).not.toThrow();
  });
});
