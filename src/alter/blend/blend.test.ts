import { describe, expect, it } from 'vitest';
import { SIZES, TUBE } from '../../../test/six-seam-tube.ts';
import {
  distance,
  lerp,
  nearestPlace,
  pathAt,
  pathEnd,
  pathFlatten,
  pathLength,
  pathStart,
} from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { garmentAtSize } from '../../garment/index.ts';
import { blend } from './blend.ts';

const edgeOf = (piece: DrawnPiece, id: string) => piece.edges.find((e) => e.id === id)!;
const pieceOf = (pieces: readonly DrawnPiece[], id: string) => pieces.find((p) => p.id === id)!;

/** Turn in degrees at each joint of a path's cubics. */
function joints(path: Path): number[] {
  const out: number[] = [];
  for (let i = 3; i + 3 < path.length; i += 3) {
    const a = Math.atan2(path[i]!.y - path[i - 1]!.y, path[i]!.x - path[i - 1]!.x);
    const b = Math.atan2(path[i + 1]!.y - path[i]!.y, path[i + 1]!.x - path[i]!.x);
    const turn = Math.abs(b - a);
    out.push((Math.min(turn, 2 * Math.PI - turn) * 180) / Math.PI);
  }
  return out;
}

describe('blending one size', () => {
  it('gives each printed size as printed, point for point', () => {
    for (let size = 0; size < SIZES; size++) {
      const { garment, findings } = blend(TUBE, { base: size, levels: {} });
      expect(garment).toEqual(garmentAtSize(TUBE, size));
      expect(findings).toEqual([]);
    }
  });

  it('interpolates every point halfway between two sizes (trade.md 5.1 step 2: P = (1 − t) Pn + t Pn+1; derived)', () => {
    const a = garmentAtSize(TUBE, 1);
    const b = garmentAtSize(TUBE, 2);
    const { garment } = blend(TUBE, { base: 1.5, levels: {} });
    garment.pieces.forEach((piece, p) =>
      piece.edges.forEach((edge, e) =>
        edge.path.forEach((point, i) => {
          const want = lerp(a.pieces[p]!.edges[e]!.path[i]!, b.pieces[p]!.edges[e]!.path[i]!, 0.5);
          expect(distance(point, want)).toBeLessThan(1e-9);
        }),
      ),
    );
  });

  it('returns the same piece objects when no level they see has changed, so that nothing is drawn twice', () => {
    const one = blend(TUBE, { base: 1, levels: { waist: 2.25, hip: 1 } }).garment;
    const two = blend(TUBE, { base: 1, levels: { waist: 2.25, hip: 3 } }).garment;
    one.pieces.forEach((piece, i) => expect(two.pieces[i]).toBe(piece));
  });
});

describe('blending across sizes', () => {
  const sizes = { base: 0, levels: { bust: 0.5, waist: 2.75, 'high-hip': 3 } };
  const { garment } = blend(TUBE, sizes);

  it('takes every corner at the size of its level, shared exactly by both edges', () => {
    for (const piece of garment.pieces) {
      piece.edges.forEach((edge, i) => {
        const next = piece.edges[(i + 1) % piece.edges.length]!;
        expect(pathEnd(edge.path)).toEqual(pathStart(next.path));
      });
    }
    // Side front, bust corner: half of 120 + 6 × 0.5. High hip: half of 118 + 6 × 3. By hand from the fixture.
    const side = pieceOf(garment.pieces, 'side-front');
    expect(pathEnd(edgeOf(side, 'right').path).x).toBeCloseTo(61.5, 9);
    expect(pathStart(edgeOf(side, 'right').path).x).toBeCloseTo(68, 9);
  });

  it('passes each level at exactly the width of that level’s size', () => {
    for (const piece of garment.pieces) {
      const edge = edgeOf(piece, 'right');
      const waist = edge.crossings.find((c) => c.level === 'waist')!;
      const at = pathAt(edge.path, waist.at);
      const low = pathAt(
        edgeOf(pieceOf(garmentAtSize(TUBE, 2).pieces, piece.id), 'right').path,
        crossAt(piece.id, 2),
      );
      const high = pathAt(
        edgeOf(pieceOf(garmentAtSize(TUBE, 3).pieces, piece.id), 'right').path,
        crossAt(piece.id, 3),
      );
      expect(distance(at, lerp(low, high, 0.75))).toBeLessThan(1e-4);
    }
  });

  it('runs smoothly: no corner where a size changes, and never outside the sizes it lies between', () => {
    for (const piece of garment.pieces) {
      const edge = edgeOf(piece, 'right');
      for (const turn of joints(edge.path)) expect(turn).toBeLessThan(0.01);
      // All sizes widen outwards evenly on this tube, so x must stay between the drawn lines of sizes 0.5 and 3.
      const inner = edgeOf(
        pieceOf(blend(TUBE, { base: 0.5, levels: {} }).garment.pieces, piece.id),
        'right',
      ).path;
      const outer = edgeOf(
        pieceOf(blend(TUBE, { base: 3, levels: {} }).garment.pieces, piece.id),
        'right',
      ).path;
      for (const p of pathFlatten(edge.path, 0.05)) {
        expect(p.x).toBeGreaterThan(nearestPlace(inner, p).point.x - 0.06);
        expect(p.x).toBeLessThan(nearestPlace(outer, p).point.x + 0.06);
      }
    }
  });

  it('keeps the two sides of a seam equal within half a millimetre', () => {
    for (const seam of TUBE.seams) {
      const a = edgeOf(pieceOf(garment.pieces, seam.a[0]!.piece), seam.a[0]!.edge);
      const b = edgeOf(pieceOf(garment.pieces, seam.b[0]!.piece), seam.b[0]!.edge);
      const printed = garmentAtSize(TUBE, 0).pieces;
      const drawnApart =
        pathLength(edgeOf(pieceOf(printed, seam.a[0]!.piece), seam.a[0]!.edge).path) -
        pathLength(edgeOf(pieceOf(printed, seam.b[0]!.piece), seam.b[0]!.edge).path);
      expect(pathLength(a.path) - pathLength(b.path) - drawnApart).toBeWithinMm(0, 1);
    }
  });

  it('draws level lines from outline to outline and takes notches and marks along', () => {
    for (const piece of garment.pieces) {
      for (const line of piece.lines.filter((l) => l.kind === 'level' || l.kind === 'adjust')) {
        for (const end of [pathStart(line.path), pathEnd(line.path)]) {
          const gap = Math.min(...piece.edges.map((e) => nearestPlace(e.path, end).distance));
          expect(gap).toBeLessThan(0.05);
        }
      }
      const right = edgeOf(piece, 'right');
      expect(right.notches[0]!.at).toBeCloseTo(right.crossings[0]!.at, 6);
      expect(piece.marks[0]!.at).toEqual({ x: 20, y: -180 });
    }
  });

  it('says so when a size lies beyond the nest, and stops one step out', () => {
    const far = blend(TUBE, { base: 0, levels: { waist: 6.5, bust: -0.4 } });
    expect(far.findings.map((f) => [f.code, f.severity, f.where.level])).toEqual([
      ['size-beyond-nest', 'error', 'waist'],
      ['size-extrapolated', 'warning', 'bust'],
    ]);
    expect(far.garment).toEqual(blend(TUBE, { base: 0, levels: { waist: 5, bust: -0.4 } }).garment);
    expect(blend(TUBE, { base: NaN, levels: {} }).findings[0]!.code).toBe('size-not-a-number');
  });
});

function crossAt(piece: string, size: number): number {
  return TUBE.pieces.find((p) => p.id === piece)!.edges.find((e) => e.id === 'right')!.crossings[0]!.at[
    size
  ]!;
}
