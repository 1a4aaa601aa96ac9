import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  linePath,
  nearestPlace,
  pathAt,
  pathEnd,
  pathLength,
  pathStart,
  pathsArea,
} from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { apart } from './apart.test-case.ts';
import { mirrorPiece } from './mirror.ts';
import { pullEdges } from './pull.ts';
import { BODICE, PANELS, SKIRT } from '../drawn/schematic.ts';
import { transferStrip } from './transfer.ts';
import type { StripWidth } from './transfer.ts';

// Laws named in the brief of the alterations and in docs/trade.md 5.16 (derived). The pieces are the plain garments of schematic.ts.

const pieces = [...BODICE.pieces.slice(0, 3), ...PANELS.pieces, ...SKIRT.pieces.slice(0, 2)];
const onPiece = fc.constantFrom(...pieces);

describe('pull', () => {
  it('is undone by the opposite pull to 0.02 mm', () => {
    fc.assert(
      fc.property(
        onPiece,
        fc.nat(20),
        fc.record({
          x: fc.double({ min: -15, max: 15, noNaN: true }),
          y: fc.double({ min: -15, max: 15, noNaN: true }),
        }),
        (piece, k, by) => {
          // An edge whose chord lies near 45 degrees may spread along the other axis on the way back: left out here, see pull.ts.
          const n = piece.edges.length;
          const near = [piece.edges[k % n]!, piece.edges[(k + n - 1) % n]!].some((e) => {
            const d = {
              x: pathEnd(e.path).x - pathStart(e.path).x,
              y: pathEnd(e.path).y - pathStart(e.path).y,
            };
            return Math.abs(Math.abs(d.x) - Math.abs(d.y)) < 45;
          });
          fc.pre(!near);
          const edge = piece.edges[k % piece.edges.length]!.id;
          const there = pullEdges(piece, [{ edge, at: 0, by }]);
          const back = pullEdges(there, [{ edge, at: 0, by: { x: -by.x, y: -by.y } }]);
          expect(apart(back, piece)).toBeLessThan(0.02);
        },
      ),
      { numRuns: 200, seed: 4 },
    );
  });

  it('keeps a straight side straight: half an inch at the hip over 8 in turns it 3.58 degrees', () => {
    // docs/trade.md 5.3 (a), derived: atan(0.5/8).
    const skirt = SKIRT.pieces[0]!;
    const upright = pullEdges(skirt, [{ edge: 'side', at: 0, by: { x: -60, y: 0 } }]);
    const out = pullEdges(upright, [{ edge: 'side', at: 0, by: { x: (0.5 / 8) * 600, y: 0 } }]);
    const side = out.edges.find((e) => e.id === 'side')!;
    const d = {
      x: pathStart(side.path).x - pathEnd(side.path).x,
      y: pathEnd(side.path).y - pathStart(side.path).y,
    };
    expect((Math.atan2(d.x, d.y) * 180) / Math.PI).toBeCloseTo(3.58, 2);
    expect(nearestPlace(side.path, { x: 200 + d.x / 2, y: -300 }).distance).toBeLessThan(1e-6);
  });
});

describe('transfer', () => {
  const front = BODICE.pieces[0]!;
  const back = BODICE.pieces[1]!;
  const size = (p: DrawnPiece, id: string) => pathLength(p.edges.find((e) => e.id === id)!.path);
  const pair = (a: DrawnPiece, b: DrawnPiece, edge: string, widths: readonly StripWidth[]) => {
    const moved = transferStrip(
      { pieces: [a], chain: [{ piece: 'front', edge }] },
      { pieces: [b], chain: [{ piece: 'back', edge }] },
      widths,
    );
    return { a: moved.a[0]!, b: moved.b[0]! };
  };
  const shoulder = (widths: readonly StripWidth[]) => pair(front, back, 'shoulder', widths);

  it('gives to the one piece what it takes from the other: the armholes keep their sum', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -18, max: 18, noNaN: true }),
        fc.double({ min: -10, max: 10, noNaN: true }),
        (tip, neck) => {
          const moved = shoulder([
            { at: 0, width: tip },
            { at: 1, width: neck },
          ]);
          expect(size(moved.a, 'armhole')).toBeWithinMm(size(front, 'armhole') - tip, 1e-3);
          expect(size(moved.b, 'armhole')).toBeWithinMm(size(back, 'armhole') + tip, 1e-3);
          expect(size(moved.a, 'neck') + size(moved.b, 'neck')).toBeWithinMm(
            size(front, 'neck') + size(back, 'neck'),
            1e-3,
          );
        },
      ),
      { numRuns: 200, seed: 5 },
    );
  });

  it('keeps the total width of the pair at every level: a side seam moved', () => {
    // Sides set upright, so that hem and waist meet them square and the strip's ends lie level.
    const [one, two] = [SKIRT.pieces[0]!, SKIRT.pieces[1]!].map((p) =>
      pullEdges(p, [{ edge: 'side', at: 0, by: { x: -60, y: 0 } }]),
    ) as [DrawnPiece, DrawnPiece];
    const moved = pair(one, two, 'side', [
      { at: 0, width: 15 },
      { at: 1, width: 5 },
    ]);
    const at = (p: DrawnPiece, y: number) => {
      const side = p.edges.find((e) => e.id === 'side')!.path;
      return pathAt(side, (y - pathStart(side).y) / (pathEnd(side).y - pathStart(side).y)).x;
    };
    for (const y of [-580, -400, -200, -50]) {
      const before = at(one, y) + at(two, y);
      expect(at(moved.a, y) + at(moved.b, y)).toBeWithinMm(before, 1e-6);
      expect(at(moved.a, y)).toBeLessThan(at(one, y) - 4);
    }
  });

  it('taken over and given back: the original to 0.02 mm', () => {
    const there = shoulder([
      { at: 0, width: 12 },
      { at: 1, width: 4 },
    ]);
    const home = pair(there.a, there.b, 'shoulder', [
      { at: 0, width: -12 },
      { at: 1, width: -4 },
    ]);
    expect(apart(home.a, front)).toBeLessThan(0.02);
    expect(apart(home.b, back)).toBeLessThan(0.02);
  });
});

describe('transfer over several pieces', () => {
  const box = (id: string, low: number, high: number): DrawnPiece => {
    const corners = [
      { x: 0, y: low },
      { x: 200, y: low },
      { x: 200, y: high },
      { x: 0, y: high },
    ];
    return {
      ...SKIRT.pieces[0]!,
      id,
      darts: [],
      lines: [],
      marks: [],
      edges: ['low', 'side', 'high', 'centre'].map((edge, i) => ({
        ...SKIRT.pieces[0]!.edges[1]!,
        id: edge,
        name: edge,
        kind: 'seam' as const,
        notches: [],
        crossings: [],
        path: linePath(corners[i]!, corners[(i + 1) % 4]!),
      })),
    };
  };
  const edgeOf = (p: DrawnPiece, id: string) => p.edges.find((e) => e.id === id)!.path;

  it('a side seam over yoke and body: the joint between them goes along, the width all round stays', () => {
    const moved = transferStrip(
      {
        pieces: [box('body', 0, 300), box('yoke', 300, 400)],
        chain: [
          { piece: 'body', edge: 'side' },
          { piece: 'yoke', edge: 'side' },
        ],
      },
      { pieces: [box('back', 0, 400)], chain: [{ piece: 'back', edge: 'side' }] },
      [
        { at: 0, width: 20 },
        { at: 1, width: 4 },
      ],
    );
    const [body, yoke] = moved.a as [DrawnPiece, DrawnPiece];
    // 20 mm at the hem, 4 mm at the top, so 20 − 16 · 300/400 = 8 mm at the joint.
    expect(pathLength(edgeOf(body, 'low'))).toBeWithinMm(180, 1e-9);
    expect(pathLength(edgeOf(body, 'high'))).toBeWithinMm(192, 1e-9);
    expect(pathLength(edgeOf(yoke, 'low'))).toBeWithinMm(192, 1e-9);
    expect(pathLength(edgeOf(yoke, 'high'))).toBeWithinMm(196, 1e-9);
    expect(pathLength(edgeOf(moved.b[0]!, 'low'))).toBeWithinMm(220, 1e-9);
    const sides = pathLength(edgeOf(body, 'side')) + pathLength(edgeOf(yoke, 'side'));
    expect(sides).toBeWithinMm(pathLength(edgeOf(moved.b[0]!, 'side')), 1e-9);
  });
});

describe('a piece turned over', () => {
  it('twice is the same piece, once has the same area and still runs counter-clockwise', () => {
    for (const piece of pieces) {
      const over = mirrorPiece(piece);
      const area = pathsArea(over.edges.map((e) => e.path));
      expect(area).toBeGreaterThan(0);
      expect(Math.abs(area - pathsArea(piece.edges.map((e) => e.path)))).toBeLessThan(1e-6);
      expect(apart(mirrorPiece(over), piece)).toBeLessThan(1e-9);
    }
  });
});
