import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CURVE_MM,
  distance,
  pathAt,
  pathEnd,
  pathLength,
  pathSplit,
  pathStart,
  placeAtShare,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece, Edge } from '../../garment/index.ts';
import { BODICE, PANELS, SKIRT } from '../drawn/schematic.ts';
import { across, extent } from '../role/height.ts';
import { Refusal } from '../words/refusal.ts';
import { hingePart } from './hinge.ts';
import { pullEdge } from './pull.ts';
import type { PullNode } from './pull.ts';
import { slidePart } from './slide.ts';

// The same line may come as one cubic from our own draft and as seven from a file: what is drawn from it must be the same line.

/** The same curve in more cubics. */
function cutUp(path: Path, shares: readonly number[]): Path {
  let out = path;
  for (const share of shares) {
    const [before, after] = pathSplit(out, placeAtShare(out, share));
    if (pathLength(before) < 1 || pathLength(after) < 1) continue;
    out = [...before, ...after.slice(1)];
  }
  return out;
}

const edgesCut = (piece: DrawnPiece, shares: readonly number[]): DrawnPiece => ({
  ...piece,
  edges: piece.edges.map((e) => ({ ...e, path: cutUp(e.path, shares) })),
});

const SHARES = Array.from({ length: 41 }, (_, i) => i / 40);

/** How far two edges are apart: their places at every share of their lengths, their notches, their levels. */
function apart(a: Edge<'one'>, b: Edge<'one'>): number {
  const at = (p: number, q: number): number => distance(pathAt(a.path, p), pathAt(b.path, q));
  return Math.max(
    ...SHARES.map((s) => at(s, s)),
    ...a.notches.map((n, i) => at(n.at, b.notches[i]!.at)),
    ...a.crossings.map((c, i) => at(c.at, b.crossings[i]!.at)),
  );
}

/** One to three cubics with any controls at all on a cutting table: loops, cusps and doubled points included. */
const coordinate = fc.integer({ min: -40_000, max: 40_000 }).map((v) => v / 100);
const anyPath: fc.Arbitrary<Path> = fc
  .integer({ min: 1, max: 3 })
  .chain((n) =>
    fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 3 * n + 1, maxLength: 3 * n + 1 }),
  );
const share = fc.integer({ min: 2, max: 98 }).map((n) => n / 100);
const shares = fc.oneof(
  fc.array(share, { minLength: 1, maxLength: 1 }),
  fc.array(share, { minLength: 6, maxLength: 6 }),
);
const mm = fc.integer({ min: -300, max: 300 }).map((n) => n / 10);
const by: fc.Arbitrary<Point> = fc.record({ x: mm, y: mm });
const node: fc.Arbitrary<PullNode> = fc.record({ at: share, by, smooth: fc.boolean() });

/** From one to three nodes between the ends, in order and not on one another. */
const nodes: fc.Arbitrary<PullNode[]> = fc
  .tuple(node, fc.uniqueArray(node, { maxLength: 3, selector: (n) => Math.round(n.at * 8) }), node)
  .map(([first, inner, last]) => [
    { ...first, at: 0 },
    ...inner.toSorted((a, b) => a.at - b.at),
    { ...last, at: 1 },
  ]);

const edgeOf = (path: Path): Edge<'one'> => ({
  id: 'line',
  name: 'line',
  kind: 'seam',
  path,
  from: 'hem',
  allowance: 10,
  notches: [{ id: 'n', at: 0.37, count: 1 }],
  crossings: [],
});

const pieces = [...BODICE.pieces, ...PANELS.pieces, ...SKIRT.pieces];

describe('where a line has its joints does not matter', () => {
  it('to a pull', () => {
    fc.assert(
      fc.property(anyPath, shares, nodes, (path, cuts, pulls) => {
        fc.pre(distance(pathStart(path), pathEnd(path)) > 50);
        const one = pullEdge(edgeOf(path), pulls);
        const many = pullEdge(edgeOf(cutUp(path, cuts)), pulls);
        expect(apart(one, many)).toBeLessThan(CURVE_MM);
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  it('to a slide, even or as a wedge', () => {
    let done = 0;
    fc.assert(
      fc.property(fc.constantFrom(...pieces), shares, share, mm, mm, (piece, cuts, high, a, b) => {
        const { low, high: top } = extent(piece);
        const { left, right } = across(piece, low + (top - low) * high);
        const slide = { from: left, to: right, atFrom: a, atTo: b };
        const one = attempt(() => slidePart(piece, slide));
        const many = attempt(() => slidePart(edgesCut(piece, cuts), slide));
        expect(one === undefined).toBe(many === undefined);
        if (!one || !many) return;
        done++;
        for (const [i, edge] of one.edges.entries())
          expect(apart(edge, many.edges[i]!)).toBeLessThan(CURVE_MM);
      }),
      { numRuns: 200, seed: 8 },
    );
    expect(done).toBeGreaterThan(100);
  });

  it('to a slash that opens about a hinge inside or on the seam', () => {
    let done = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...pieces),
        shares,
        fc.tuple(fc.nat(20), share),
        fc.tuple(fc.nat(20), share),
        fc.constantFrom(0.4, 0.7, 1),
        fc.integer({ min: -15, max: 15 }),
        (piece, cuts, [m, from], [h, to], deep, degrees) => {
          const [i, k] = [m % piece.edges.length, h % piece.edges.length];
          fc.pre(i !== k && degrees !== 0);
          const mouth = pathAt(piece.edges[i]!.path, from);
          const end = pathAt(piece.edges[k]!.path, to);
          const hinge = { x: mouth.x + (end.x - mouth.x) * deep, y: mouth.y + (end.y - mouth.y) * deep };
          fc.pre(distance(mouth, hinge) > 40);
          const slash = { hinge, mouth, angle: (degrees * Math.PI) / 180 };
          const one = hingePart(piece, slash);
          const many = hingePart(edgesCut(piece, cuts), slash);
          done++;
          for (const [n, edge] of one.edges.entries())
            expect(apart(edge, many.edges[n]!)).toBeLessThan(CURVE_MM);
        },
      ),
      { numRuns: 200, seed: 9 },
    );
    expect(done).toBeGreaterThan(100);
  });
});

function attempt<T>(f: () => T): T | undefined {
  try {
    return f();
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}
