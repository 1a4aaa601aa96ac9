import { describe, expect, it } from 'vitest';
import { applyStep } from '../src/alter/index.ts';
import { walkAll } from '../src/check/index.ts';
import { assembled, chainLength, garmentAtSize, timesCut } from '../src/garment/index.ts';
import type { Garment, Pattern, PartEdge, SewnJoin } from '../src/garment/index.ts';
import { SAMPLES, sample } from '../src/samples/index.ts';
import { wrapFront } from './wrap-front.ts';

/** A sample in its middle size; a back that is not yet said to be one is one by its id. */
function sewn(pattern: Pattern): Garment {
  const garment = garmentAtSize(pattern, Math.floor(pattern.chart.sizes.length / 2));
  const pieces = garment.pieces.map((p) =>
    p.half === undefined && p.id.startsWith('back') ? { ...p, half: 'back' as const } : p,
  );
  return { ...garment, pieces };
}
const oneSided = (garment: Garment): Garment =>
  applyStep(garment, { id: 's', kind: 'alter', entry: 'high-hip', params: { amount: 10 } }).garment;
const PATTERNS = [...SAMPLES.map(({ id }) => sample(id)), wrapFront()];
const CASES: (readonly [string, Garment])[] = [
  ...PATTERNS.map((p) => [p.id, sewn(p)] as const),
  ['a-line-skirt with one high hip', oneSided(sewn(sample('a-line-skirt')))],
];

const edges = (join: SewnJoin): readonly PartEdge[] => [...join.a, ...join.b];

describe.each(CASES)('%s, as it is sewn', (_, garment) => {
  const { parts, joins } = assembled(garment);
  const ofPiece = (id: string) => garment.pieces.find((p) => p.id === id)!;

  it('has as many parts as are counted', () => {
    for (const piece of garment.pieces)
      expect(parts.filter((p) => p.piece === piece.id).length, piece.id).toBe(timesCut(piece));
  });

  it('has every edge of a seam in every part, and every fold in its two halves, joined', () => {
    const joined = new Set(joins.flatMap(edges).map((e) => `${e.part} ${e.edge}`));
    const named = new Set(garment.seams.flatMap((s) => [...s.a, ...s.b]).map((r) => `${r.piece} ${r.edge}`));
    for (const [i, part] of parts.entries())
      for (const edge of ofPiece(part.piece).edges) {
        if (edge.kind !== 'fold' && !named.has(`${part.piece} ${edge.id}`)) continue;
        // A fly has one facing: on the other front it is the shield's.
        if (edge.id === 'fly' && part.piece === 'front' && part.side === 'right') continue;
        expect(joined.has(`${i} ${edge.id}`), `${part.piece} ${part.side}, ${edge.id}`).toBe(true);
      }
  });

  it('joins an edge once to each layer of what it is sewn to', () => {
    for (const seam of garment.seams) {
      const own = joins.filter((j) => j.seam === seam.id);
      const layers = Math.max(
        1,
        ...[...seam.a, ...seam.b].map(
          (r) => ofPiece(r.piece).worn.length / new Set(ofPiece(r.piece).worn.map((w) => w.side)).size,
        ),
      );
      const times = new Map<string, number>();
      for (const e of own.flatMap(edges)) {
        const key = `${e.part} ${e.edge} ${e.backwards}`;
        times.set(key, (times.get(key) ?? 0) + 1);
      }
      for (const [key, n] of times) expect(n, `${seam.id}: ${key}`).toBeLessThanOrEqual(layers);
    }
  });

  it('joins left to left and right to right, but at centre seams, folds and what goes all round', () => {
    for (const join of joins) {
      const sides = new Set(edges(join).map((e) => parts[e.part]!.side));
      sides.delete('both');
      const [a, b] = [join.a, join.b].map((c) =>
        c.map((e) => ofPiece(parts[e.part]!.piece).of ?? parts[e.part]!.piece),
      );
      const centre = a!.some((id) => b!.includes(id));
      const round = Math.max(a!.length, b!.length) > new Set([...a!, ...b!]).size;
      if (!centre && !round) expect(sides.size, join.seam).toBeLessThanOrEqual(1);
    }
  });

  it('is as long along every join as the walk of its seam', () => {
    const walks = new Map(walkAll(garment).map((w) => [w.seam.id, w]));
    const long = (chain: readonly PartEdge[]): number =>
      chainLength(
        garment,
        chain.map((e) => ({ piece: parts[e.part]!.piece, edge: e.edge, backwards: e.backwards })),
      );
    for (const join of joins) {
      if (join.seam === undefined) continue;
      const walk = walks.get(join.seam)!;
      expect([long(join.a), long(join.b)], join.seam).toEqual([
        expect.closeTo(walk.a, 6),
        expect.closeTo(walk.b, 6),
      ]);
    }
  });

  it('meets from end to end in one direction, twins where their twins meet', () => {
    const seen = new Map<string | undefined, SewnJoin['meets']>();
    for (const { seam, meets } of joins) {
      expect(meets[0]).toEqual({ a: 0, b: 0 });
      expect(meets.at(-1)).toEqual({ a: 1, b: 1 });
      for (const [i, m] of meets.slice(1).entries()) {
        expect(m.a).toBeGreaterThan(meets[i]!.a);
        expect(m.b).toBeGreaterThan(meets[i]!.b);
      }
      if (seam !== undefined) expect(seen.get(seam) ?? meets).toEqual(meets);
      seen.set(seam, meets);
    }
  });
});

describe('a garment as it is sewn', () => {
  const said = (pattern: Pattern, seam: string): string[] => {
    const { parts, joins } = assembled(sewn(pattern));
    const words = (chain: readonly PartEdge[]) =>
      chain.map((e) => `${parts[e.part]!.side} ${parts[e.part]!.piece}`).join(', ');
    return joins.filter((j) => j.seam === seam).map((j) => `${words(j.a)} | ${words(j.b)}`);
  };

  it('has a side seam on either side and one crotch seam', () => {
    const trousers = sample('work-trousers');
    expect(said(trousers, 'side').toSorted()).toEqual(['left front | left back', 'right front | right back']);
    expect(said(trousers, 'crotch-front')).toEqual(['left front | right front']);
  });

  it('has the outer collar sewn to the neck and the inner one to its facing', () => {
    const { parts, joins } = assembled(sewn(sample('stage-bodice')));
    const collars = (seam: string) =>
      new Set(
        joins
          .filter((j) => j.seam === seam)
          .flatMap((j) => j.a)
          .map((e) => parts[e.part]!.worn),
      );
    expect([...collars('neck')]).toEqual([0]);
    expect([...collars('facing-neck')]).toEqual([1]);
  });

  it('has a neckband that goes round by left and right', () => {
    expect(said(sample('knit-tee'), 'neck')).toEqual([
      'left back, right back, right front, left front | both neckband',
    ]);
  });

  it('has the side seam of a bought left front on the left only', () => {
    const wrap = wrapFront();
    const [left, right] = ['left', 'right'].map(
      (side) => wrap.seams.find((s) => s.id === `side-${side}`)!.id,
    );
    expect(said(wrap, left!)).toEqual(['left front-left | left back']);
    expect(said(wrap, right!)).toEqual(['right front-right | right back']);
  });
});
