import { describe, expect, it } from 'vitest';
import {
  angleBetween,
  distance,
  movePoint,
  nearestPlace,
  pathAt,
  pathEnd,
  pathStart,
  polylinePath,
  reflectPoint,
  ringContains,
  sub,
  turnAbout,
} from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { cuttingOutline } from './cutting-outline.ts';
import { dartedSkirt, straightPiece } from '../../test/hand-piece.ts';

const none = (): undefined => undefined;
const sideOf = (cutting: ReturnType<typeof cuttingOutline>, id: string): Path =>
  cutting.sides.find((s) => s.edge === id || s.dart === id)!.cut;

describe('a cutting outline', () => {
  it('runs round every edge at its own allowance and not at all outside of a fold', () => {
    const cutting = cuttingOutline(dartedSkirt(), none);
    const piece = dartedSkirt();
    for (const edge of piece.edges) {
      if (edge.kind === 'dart') continue;
      const cut = sideOf(cutting, edge.id);
      expect(nearestPlace(cut, pathAt(edge.path, 0.5)).distance, edge.id).toBeWithinMm(edge.allowance, 0.05);
    }
    expect(Math.min(...cutting.outline.map((p) => p.x))).toBeWithinMm(0, 1e-6);
  });

  it('goes round outside of a dart’s mouth, not into the dart', () => {
    const piece = dartedSkirt();
    const { outline } = cuttingOutline(piece, none);
    const legs = piece.edges.filter((e) => e.kind === 'dart').map((e) => e.path);
    for (const leg of legs)
      for (const s of [0, 0.3, 0.6, 1]) expect(ringContains(outline, pathAt(leg, s))).toBe(true);
    const middle = { x: 126, y: 584 };
    expect(ringContains(outline, middle)).toBe(true);
  });

  it.each(['first', 'second'] as const)(
    'with the dart folded toward its %s leg, the cloth inside it ends along the edge it lies on',
    (toward) => {
      const piece = dartedSkirt(toward);
      const [first, second] = piece.edges.filter((e) => e.kind === 'dart').map((e) => e.path) as [Path, Path];
      const point = pathEnd(first);
      const cap = sideOf(cuttingOutline(piece, none), 'dart');
      const own = toward === 'first' ? 'waist-side' : 'waist-centre';
      const leg = toward === 'first' ? pathStart(first) : pathEnd(second);
      const edge = piece.edges.find((e) => e.id === own)!.path;
      // The half next to that leg is folded over on it; the other half, with its own leg turned on to that leg, lies there too.
      const turned = angleBetween(sub(pathStart(first), point), sub(pathEnd(second), point));
      const close = (p: Point): Point =>
        toward === 'first' ? movePoint(p, turnAbout(point, -turned)) : movePoint(p, turnAbout(point, turned));
      let near = 0;
      let far = 0;
      for (let s = 0.02; s < 1; s += 0.04) {
        const p = pathAt(cap, s);
        const folded = reflectPoint(p, point, sub(leg, point));
        const [a, b] = [nearestPlace(edge, folded).distance, nearestPlace(edge, close(p)).distance];
        if (Math.abs(a - 12) < 0.06) near++;
        if (Math.abs(b - 12) < 0.06) far++;
        expect(Math.min(Math.abs(a - 12), Math.abs(b - 12))).toBeLessThan(0.06);
      }
      expect(near).toBeGreaterThan(3);
      expect(far).toBeGreaterThan(3);
    },
  );

  it('a dart of no width leaves no trace in it', () => {
    const piece = dartedSkirt();
    const m = { x: 126, y: 584 };
    const edges = piece.edges.map((e) => {
      if (e.id === 'waist-side') return { ...e, path: polylinePath([{ x: 240, y: 600 }, m]) };
      if (e.id === 'dart-first') return { ...e, path: polylinePath([m, { x: 122, y: 480 }]) };
      if (e.id === 'dart-second') return { ...e, path: polylinePath([{ x: 122, y: 480 }, m]) };
      if (e.id === 'waist-centre') return { ...e, path: polylinePath([m, { x: 0, y: 580 }]) };
      return e;
    });
    const { outline, looped } = cuttingOutline({ ...piece, edges }, none);
    expect(looped).toBe(0);
    expect(Math.min(...outline.map((p) => distance(p, { x: 122, y: 480 })))).toBeGreaterThan(90);
  });

  it('shapes the corner for the seam that is sewn first: pressed open, it lies along the other edge', () => {
    // e1 is the side, sewn first; e2 the armhole, leaning.
    const piece = straightPiece(
      'a',
      [
        { x: 0, y: 0 },
        { x: 200, y: 0 },
        { x: 200, y: 300 },
        { x: 20, y: 340 },
      ],
      ['hem', 'seam', 'seam', 'seam'],
      [30, 15, 10, 15],
    );
    const order = (_: string, id: string): number | undefined => ({ e1: 1, e2: 2, e3: 1 })[id];
    const side = sideOf(cuttingOutline(piece, order), 'e1');
    const end = pathEnd(side);
    const tip = side[side.length - 4]!;
    // Folded on the side seam (x = 200) the tip lies on the armhole's cutting line, 10 mm outside of its stitching line.
    expect(end.x).toBeWithinMm(200, 1e-6);
    const folded = { x: 400 - tip.x, y: tip.y };
    const d = { x: -180, y: 40 };
    const off = ((folded.x - 200) * d.y - (folded.y - 300) * d.x) / Math.hypot(d.x, d.y);
    expect(off).toBeWithinMm(10, 1e-6);
    expect(tip.x).toBeWithinMm(215, 1e-6);
  });

  it('turns a hem up along the sides', () => {
    const cutting = cuttingOutline(dartedSkirt(), none);
    const hem = sideOf(cutting, 'hem');
    const side = sideOf(cutting, 'side');
    const tip = hem[hem.length - 4]!;
    const folded = reflectPoint(tip, { x: 0, y: 0 }, { x: 290, y: 20 });
    expect(nearestPlace(side, folded).distance).toBeLessThan(1e-6);
  });
});
