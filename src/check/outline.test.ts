import { describe, expect, it } from 'vitest';
import { at, edge, garment, piece, plain, polygon, quarter } from '../../test/drawn.ts';
import type { DrawnPiece } from '../garment/index.ts';
import { linePath, pathJoin } from '../geometry/index.ts';
import { cornerAngle } from './corner.ts';
import { checkOutline, checkOutlines } from './outline.ts';

const codes = (p: DrawnPiece): string[] =>
  checkOutline(p)
    .map((f) => f.code)
    .filter((c) => c !== 'grain-missing');
const square = [at(0, 0), at(100, 0), at(100, 100), at(0, 100)];

describe('one outline', () => {
  it('has nothing to say about a sound piece but that its grain is missing', () => {
    expect(checkOutline(polygon('p', square)).map((f) => [f.code, f.severity])).toEqual([
      ['grain-missing', 'note'],
    ]);
  });

  it('finds an outline that crosses itself, and where', () => {
    const bow = polygon('p', [at(0, 0), at(100, 0), at(20, 80), at(80, 80)]);
    const finding = checkOutline(bow).find((f) => f.code === 'outline-crosses-itself')!;
    // Diagonals (100,0)–(20,80) and (80,80)–(0,0) meet at (50, 50): by hand.
    expect(finding.severity).toBe('error');
    expect(finding.where.at!.x).toBeWithinMm(50, 1e-6);
    expect(finding.where.at!.y).toBeWithinMm(50, 1e-6);
  });

  it('does not mind a closed dart, whose legs only touch', () => {
    expect(
      codes(
        polygon('p', [at(0, 0), at(100, 0), at(100, 100), at(50, 100), at(50, 60), at(50, 100), at(0, 100)]),
      ),
    ).not.toContain('outline-crosses-itself');
  });

  it('finds one that turned inside out, one that is open, and one that is no number', () => {
    expect(codes(polygon('p', square.toReversed()))).toContain('outline-inverted');
    const open = polygon('p', square);
    const gap = {
      ...open,
      edges: open.edges.map((e, i) => (i === 0 ? { ...e, path: linePath(at(0, 0), at(99, 0)) } : e)),
    };
    expect(checkOutline(gap).find((f) => f.code === 'outline-open')!.amount).toBeWithinMm(1, 1e-9);
    expect(codes(polygon('p', [at(0, 0), at(NaN, 0), at(0, 100)]))).toEqual(['outline-not-a-number']);
  });

  it('finds an edge eaten up and one that turns back', () => {
    expect(codes(polygon('p', [at(0, 0), at(100, 0), at(100, 1), at(0, 100)]))).toContain('edge-tiny');
    const back = piece('p', [
      edge({
        id: 'a',
        path: pathJoin([
          linePath(at(0, 0), at(60, 0)),
          linePath(at(60, 0), at(40, -2)),
          linePath(at(40, -2), at(100, -5)),
        ]),
      }),
      edge({ id: 'b', path: linePath(at(100, -5), at(100, 100)) }),
      edge({ id: 'c', path: linePath(at(100, 100), at(0, 0)) }),
    ]);
    expect(codes(back)).toContain('edge-turns-back');
  });

  it('finds dart legs that differ, by the seam table', () => {
    const withLegs = (off: number): DrawnPiece => ({
      ...polygon('p', [
        at(0, 0),
        at(100, 0),
        at(100, 100),
        at(60, 100 + off),
        at(50, 50),
        at(40, 100),
        at(0, 100),
      ]),
      darts: [{ id: 'd', name: 'waist dart', legs: ['e3', 'e4'], foldToward: 'first', serves: 'hip' }],
    });
    const found = (off: number) =>
      checkOutline(withLegs(off)).find((f) => f.code === 'dart-legs-differ')?.severity;
    // The leg is steep (10 across, 50 up), so it grows by 0.98 of what its end rises.
    expect([0, 1, 2, 4].map(found)).toEqual([undefined, 'note', 'warning', 'error']);
  });

  it('finds a grainline that leans against the fold (trade.md 6.4: 1/8 in over 20 in is 0.36°)', () => {
    const leaning = (degrees: number): DrawnPiece => {
      const p = polygon('p', square);
      const dx = 80 * Math.tan((degrees * Math.PI) / 180);
      return {
        ...p,
        edges: p.edges.map((e, i) => (i === 3 ? { ...e, kind: 'fold' as const } : e)),
        lines: [{ id: 'grain', kind: 'grain', path: linePath(at(50, 10), at(50 + dx, 90)) }],
      };
    };
    expect(codes(leaning(0.2))).not.toContain('grain-off');
    expect(codes(leaning(1))).toContain('grain-off');
    // A bias grain was meant.
    expect(codes(leaning(45))).not.toContain('grain-off');
  });
});

describe('corners', () => {
  it('measures them from the inside (a square, an L: by hand)', () => {
    const ell = polygon('p', [at(0, 0), at(100, 0), at(100, 50), at(50, 50), at(50, 100), at(0, 100)]);
    expect([0, 1, 2, 3, 4, 5].map((i) => Math.round(cornerAngle(ell, i)))).toEqual([90, 90, 90, 270, 90, 90]);
    const sector = piece('s', [
      edge({ id: 'a', path: linePath(at(0, 0), at(100, 0)) }),
      edge({ id: 'bow', path: quarter(at(0, 0), 100) }),
      edge({ id: 'b', path: linePath(at(0, 100), at(0, 0)) }),
    ]);
    expect(cornerAngle(sector, 1)).toBeCloseTo(90, 6);
  });

  it('minds a neckline that peaks at the shoulder, not a side seam that runs on into a sleeve’s', () => {
    const part = (id: string, slope: number): DrawnPiece =>
      polygon(
        id,
        [at(0, 0), at(100, 0), at(100, 100), at(0, 100 + 100 * Math.tan((slope * Math.PI) / 180))],
        ['neck', 'shoulder', 'arm', 'centre'],
      );
    const joined = (neckline: boolean) =>
      garment([part('front', 4), part('back', 4), part('collar', 0)], {
        seams: [
          plain(
            'shoulder',
            [{ piece: 'front', edge: 'shoulder', backwards: true }],
            [{ piece: 'back', edge: 'shoulder', backwards: true }],
          ),
          neckline
            ? plain(
                'arm',
                [
                  { piece: 'front', edge: 'arm', backwards: true },
                  { piece: 'back', edge: 'arm' },
                ],
                [{ piece: 'collar', edge: 'neck' }],
              )
            : plain('arm', [{ piece: 'front', edge: 'arm' }], [{ piece: 'collar', edge: 'neck' }]),
        ],
      });
    const found = (neckline: boolean) =>
      checkOutlines(joined(neckline)).filter((f) => f.code === 'corner-not-smooth').length;
    expect(found(true)).toBe(1);
    expect(found(false)).toBe(0);
  });
});
