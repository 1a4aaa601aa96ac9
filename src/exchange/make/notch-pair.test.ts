// Our samples drawn without semantics and read back: their own notches are the truth.
import { describe, expect, it } from 'vitest';
import { linePath, pathLength } from '../../geometry/index.ts';
import type { EdgeRef, NestedPiece, Pattern, Seam } from '../../garment/index.ts';
import { SAMPLES, sample } from '../../samples/index.ts';
import { recognise } from '../find/recognise.ts';
import { patternSheet } from '../write/sheet.ts';
import { pairNotches } from './notch-pair.ts';
import { patternFrom } from './pattern.ts';

/** Where each notch of a walk lies in size k, mm from the seam's start; the first of two of one name. */
function along(pattern: Pattern, chain: readonly EdgeRef[], k: number): Map<string, number> {
  const found = new Map<string, number>();
  let from = 0;
  for (const ref of chain) {
    const edge = pattern.pieces.find(({ id }) => id === ref.piece)!.edges.find(({ id }) => id === ref.edge)!;
    const long = pathLength(edge.path[k]!);
    for (const notch of edge.notches) {
      const at = from + (ref.backwards ? 1 - notch.at[k]! : notch.at[k]!) * long;
      if (!found.has(notch.id)) found.set(notch.id, at);
    }
    from += long;
  }
  return found;
}

/** For every pair of notches that bear one name in a seam: how far it is out of the range that the seam's ease allows, mm. */
function pairs(pattern: Pattern, k: number): { seam: string; off: number }[] {
  return pattern.seams.flatMap(({ id, a, b, join }) => {
    const [p, q] = [along(pattern, a, k), along(pattern, b, k)];
    return [...p].flatMap(([name, at]) => {
      const other = q.get(name);
      if (other === undefined || join.kind === 'gathered') return [];
      const most = join.kind === 'eased' ? join.most : 0;
      return [{ seam: id, off: Math.max(0, other - at, at - other - most) }];
    });
  });
}

describe.each(SAMPLES.map(({ id }) => id))('notches of %s drawn without semantics', (id) => {
  const own = sample(id);
  const { pattern } = patternFrom(recognise(patternSheet(own, { semantics: false }).drawing), {
    chart: own.chart,
  });
  const sizes = [0, Math.floor(own.chart.sizes.length / 2), own.chart.sizes.length - 1];

  it('bear one name only where they meet in every size', () => {
    for (const k of sizes) for (const { seam, off } of pairs(pattern, k)) expect(off, seam).toBeLessThan(0.5);
  });

  it('are paired across the side seam or the armhole', () => {
    expect(pairs(pattern, sizes[1]!).length).toBeGreaterThanOrEqual(2);
  });
});

describe('notches close together', () => {
  /** A sample's piece with its first edge 100 mm long and notches at these lengths. */
  const piece = (id: string, ...at: readonly number[]): NestedPiece => {
    const [first, ...rest] = sample('a-line-skirt').pieces[0]!.edges;
    const path = linePath({ x: 0, y: 0 }, { x: 100, y: 0 });
    const notches = at.map((mm, i) => ({ id: `n${i}`, at: [mm / 100], count: 1 as const }));
    return {
      ...sample('a-line-skirt').pieces[0]!,
      id,
      edges: [{ ...first!, id: 'side', path: [path], notches, crossings: [] }, ...rest],
    };
  };
  const seam: Seam = {
    ...sample('a-line-skirt').seams[0]!,
    id: 'side',
    a: [{ piece: 'front', edge: 'side' }],
    b: [{ piece: 'back', edge: 'side' }],
  };
  const names = ({ edges }: NestedPiece) => edges[0]!.notches.map((notch) => notch.id);

  it('meet in their order, though the second lies near the first of the other side too', () => {
    const [front, back] = pairNotches([piece('front', 10, 12), piece('back', 9, 13)], [seam]);
    expect(names(front!)).toEqual(names(back!));
    expect(new Set(names(front!)).size).toBe(2);
  });
});
