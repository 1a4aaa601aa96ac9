import { describe, expect, it } from 'vitest';
import { at, edge, garment, piece, plain, polygon, quarter } from '../../test/drawn.ts';
import { TUBE } from '../../test/six-seam-tube.ts';
import { garmentAtSize } from '../garment/index.ts';
import { linePath } from '../geometry/index.ts';
import { walkAll, walkFindings, walkSeam } from './walk.ts';

const strip = (id: string, length: number, notches: { id: string; at: number }[] = []) =>
  piece(id, [
    edge({ id: 'seam', path: linePath(at(0, 0), at(length, 0)), notches }),
    edge({ id: 'end', path: linePath(at(length, 0), at(length, 40)) }),
    edge({ id: 'far', path: linePath(at(length, 40), at(0, 40)) }),
    edge({ id: 'start', path: linePath(at(0, 40), at(0, 0)) }),
  ]);

describe('walking a seam', () => {
  it('finds nothing where both sides agree', () => {
    for (const walk of walkAll(garmentAtSize(TUBE, 2))) {
      expect(walk.missing).toEqual([]);
      expect(walk.notches.map((n) => n.id)).toEqual(['waist']);
      expect(walkFindings(garmentAtSize(TUBE, 2), walk).filter((f) => f.severity === 'error')).toEqual([]);
    }
  });

  it('judges the difference by the table: 0.4, 1, 2, 4 mm are nothing, a note, a warning, an error', () => {
    const severity = [0.4, 1, 2, 4].map((off) => {
      const g = garment([strip('a', 300 + off), strip('b', 300)]);
      const walk = walkSeam(g, plain('s', [{ piece: 'a', edge: 'seam' }], [{ piece: 'b', edge: 'seam' }]));
      expect(walk.difference).toBeWithinMm(off, 1e-9);
      return walkFindings(g, walk)[0]?.severity;
    });
    expect(severity).toEqual([undefined, 'note', 'warning', 'error']);
  });

  it('chains edges, forwards and backwards, and gives the interval between notches', () => {
    const g = garment([
      strip('front', 120, [{ id: 'panel', at: 0.25 }]),
      strip('side', 80, [{ id: 'under', at: 0.5 }]),
      strip('band', 200, [
        { id: 'panel', at: 90 / 200 },
        { id: 'under', at: 160 / 200 },
      ]),
    ]);
    // Walked: front backwards (notch at 120 − 30 = 90), then side forwards (notch at 120 + 40 = 160). By hand.
    const seam = plain(
      's',
      [
        { piece: 'front', edge: 'seam', backwards: true },
        { piece: 'side', edge: 'seam' },
      ],
      [{ piece: 'band', edge: 'seam' }],
    );
    const walk = walkSeam(g, seam);
    expect(
      walk.intervals.map((i) => [i.from, i.to, Math.round(i.a * 1e6) / 1e6, Math.round(i.b * 1e6) / 1e6]),
    ).toEqual([
      ['start', 'panel', 90, 90],
      ['panel', 'under', 70, 70],
      ['under', 'end', 40, 40],
    ]);
    expect(walkFindings(g, walk)).toEqual([]);
  });

  it('walks curves by their length: a quarter circle of 100 against 50 π straight (closed form)', () => {
    const bow = piece('bow', [edge({ id: 'seam', path: quarter(at(0, 0), 100) })]);
    const g = garment([bow, strip('b', 50 * Math.PI)]);
    const walk = walkSeam(g, plain('s', [{ piece: 'bow', edge: 'seam' }], [{ piece: 'b', edge: 'seam' }]));
    expect(walk.difference).toBeWithinMm(0, 0.03);
  });

  it('lets an eased seam be longer within its range and a gathered one within its ratio', () => {
    const g = garment([strip('cap', 520), strip('armhole', 500)]);
    const a = [{ piece: 'cap', edge: 'seam' }];
    const b = [{ piece: 'armhole', edge: 'seam' }];
    const off = (join: Parameters<typeof plain>[3]) => walkSeam(g, plain('s', a, b, join)).difference;
    expect(off({ join: { kind: 'eased', least: 15, most: 30 } })).toBe(0);
    expect(off({ join: { kind: 'eased', least: 25, most: 30 } })).toBeWithinMm(-5, 1e-9);
    expect(off({ join: { kind: 'eased', least: 0, most: 12 } })).toBeWithinMm(8, 1e-9);
    expect(off({ join: { kind: 'gathered', least: 1.5, most: 2 } })).toBeWithinMm(520 - 750, 1e-9);
  });

  it('reports notches that miss one another, with a remedy that trues that seam', () => {
    const g = garment([strip('a', 300, [{ id: 'n', at: 0.5 }]), strip('b', 300, [{ id: 'n', at: 0.52 }])]);
    const seam = plain('s', [{ piece: 'a', edge: 'seam' }], [{ piece: 'b', edge: 'seam' }]);
    const [finding] = walkFindings(g, walkSeam(g, seam));
    expect(finding).toMatchObject({ code: 'notch-differs', severity: 'warning', where: { seam: 's' } });
    expect(finding!.amount).toBeWithinMm(-6, 1e-9);
    expect(finding!.remedy!.steps).toEqual([{ id: 'true-s', kind: 'true', seams: ['s'] }]);
  });

  it('says when a seam names an edge that is not there', () => {
    const g = garment([polygon('a', [at(0, 0), at(10, 0), at(0, 10)])]);
    const walk = walkSeam(g, plain('s', [{ piece: 'a', edge: 'e0' }], [{ piece: 'gone', edge: 'seam' }]));
    expect(walkFindings(g, walk).map((f) => [f.code, f.where.piece])).toEqual([
      ['seam-edge-missing', 'gone'],
    ]);
  });
});
