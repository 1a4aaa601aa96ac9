import { describe, expect, it } from 'vitest';
import { at, edge, garment, levelLine, piece, polygon, quarter } from '../../test/drawn.ts';
import { SIZES, TUBE, tubeGirth } from '../../test/six-seam-tube.ts';
import { garmentAtSize, wornOnce } from '../garment/index.ts';
import { linePath } from '../geometry/index.ts';
import type { Path } from '../geometry/index.ts';
import { girthAt, measureNest, nestGirths, widthAt } from './girth.ts';

describe('the girth of a garment', () => {
  it('adds the widths of all parts, those cut twice or on the fold twice (by hand: 2 × (100 + 120 + 115 + 90))', () => {
    const girth = girthAt(garmentAtSize(TUBE, 0), 'bust')!;
    expect(girth.girth).toBeWithinMm(850, 1e-6);
    expect(girth.parts.map((p) => [p.piece, p.times])).toEqual([
      ['centre-front', 2],
      ['side-front', 2],
      ['side-back', 2],
      ['centre-back', 2],
    ]);
  });

  it('measures every size of a nest', () => {
    const nest = measureNest(TUBE);
    for (let s = 0; s < SIZES; s++) {
      expect(nest.bust![s]).toBeWithinMm(tubeGirth('bust', s), 1e-6);
      expect(nest.waist![s]).toBeWithinMm(tubeGirth('waist', s), 1e-6);
      expect(nest['high-hip']![s]).toBeWithinMm(tubeGirth('high-hip', s), 1e-6);
    }
    expect(nestGirths(TUBE)).toBe(nestGirths(TUBE));
  });

  it('says which pieces have no such line, and null where no piece is named', () => {
    const g = garmentAtSize(TUBE, 0);
    expect(girthAt(g, 'knee')).toBeNull();
    expect(girthAt({ ...g, levels: [{ level: 'knee', pieces: ['side-back'] }] }, 'knee')!.missing).toEqual([
      'side-back',
    ]);
  });

  it('counts left and right once each after a piece was parted', () => {
    const square = [at(0, 0), at(100, 0), at(100, 50), at(0, 50)];
    const line = { lines: [levelLine('bust', linePath(at(0, 25), at(100, 25)))] };
    const left = polygon('front-left', square, [], { ...line, worn: wornOnce('left') });
    const right = polygon('front-right', square, [], { ...line, worn: wornOnce('right') });
    const g = garment([left, right], { levels: [{ level: 'bust', pieces: ['front-left', 'front-right'] }] });
    expect(girthAt(g, 'bust')!.girth).toBeWithinMm(200, 1e-9);
  });
});

describe('the width of one piece', () => {
  it('leaves out what lies in a dart: 200 wide, dart 24 at the waist and 120 long, measured 40 below: 200 − 24 × 80/120', () => {
    const corners = [at(0, -300), at(200, -300), at(200, 0), at(112, 0), at(100, -120), at(88, 0), at(0, 0)];
    const skirt = (y: number) =>
      polygon('front', corners, [], { lines: [levelLine('high-hip', linePath(at(0, y), at(200, y)))] });
    expect(widthAt(skirt(-40), 'high-hip')).toBeWithinMm(200 - 16, 1e-6);
    expect(widthAt(skirt(-150), 'high-hip')).toBeWithinMm(200, 1e-6);
  });

  it('leaves out the mouth of a dart where the line is the waist seam itself', () => {
    const names = ['hem', 'side', 'waist-b', 'dart-b', 'dart-a', 'waist-a', 'centre'];
    const corners = [at(0, -300), at(200, -300), at(200, 0), at(112, 0), at(100, -120), at(88, 0), at(0, 0)];
    const drawn = polygon('front', corners, names, {
      lines: [levelLine('waist', linePath(at(0, 0), at(200, 0)))],
    });
    const waist = new Set(['waist-b', 'dart-b', 'waist-a', 'centre']);
    const withLevels = {
      ...drawn,
      edges: drawn.edges.map((e) => ({ ...e, from: waist.has(e.id) ? 'waist' : 'hem' })),
    };
    expect(widthAt(withLevels, 'waist')).toBeWithinMm(176, 1e-6);
  });

  it('is the length of the waist seam itself where that is the line, however it bows and wherever the line was drawn', () => {
    const names = ['hem', 'side', 'waist', 'centre'];
    const drawn = polygon('front', [at(0, -300), at(100, -300), at(100, 0), at(0, 100)], names, {
      lines: [levelLine('waist', linePath(at(0, 100), at(100, 0)))],
    });
    const waist = new Set(['waist', 'centre']);
    const bowed = {
      ...drawn,
      edges: drawn.edges.map((e) => ({
        ...e,
        from: waist.has(e.id) ? 'waist' : 'hem',
        path: e.id === 'waist' ? quarter(at(0, 0), 100) : e.path,
      })),
    };
    expect(widthAt(bowed, 'waist')).toBeWithinMm(50 * Math.PI, 0.03);
  });

  it('measures a bowed line along itself: a quarter circle of 100 is 50 π long (closed form)', () => {
    const bow = quarter(at(0, 0), 100);
    const sector = polygon('flare', [at(0, 50), at(50, 0), at(150, 0), at(0, 150)], [], {
      lines: [levelLine('hip', bow)],
    });
    expect(widthAt(sector, 'hip')).toBeWithinMm(50 * Math.PI, 0.03);
  });

  it('follows a line to an outline that was let out, and stops at one that was taken in', () => {
    const line = { lines: [levelLine('bust', linePath(at(0, 25), at(100, 25)))] };
    const out = polygon('a', [at(0, 0), at(112, 0), at(112, 50), at(0, 50)], [], line);
    const taken = polygon('b', [at(5, 0), at(90, 0), at(90, 50), at(5, 50)], [], line);
    expect(widthAt(out, 'bust')).toBeWithinMm(112, 1e-9);
    expect(widthAt(taken, 'bust')).toBeWithinMm(85, 1e-9);
  });

  it('takes the underarm corner as the end of the bust line although the armhole is level there, a hair above or below it', () => {
    for (const hair of [-0.01, 0, 0.01]) {
      // Armhole: quarter circle of 80 about (180, 80), reaching the underarm (180, 0) level.
      const armhole: Path = quarter(at(180, 80), 80, 180).toReversed();
      const front = piece('front', [
        edge({ id: 'hem', from: 'hem', path: linePath(at(0, -200), at(180, -200)) }),
        edge({ id: 'side', from: 'hem', path: linePath(at(180, -200), at(180, 0)) }),
        edge({ id: 'armhole', from: 'bust', path: armhole }),
        edge({ id: 'top', from: 'shoulder', path: linePath(at(100, 80), at(0, 80)) }),
        edge({ id: 'centre', from: 'neck', path: linePath(at(0, 80), at(0, -200)) }),
      ]);
      const line = levelLine('bust', linePath(at(0, hair), at(180, hair)));
      expect(widthAt({ ...front, lines: [line] }, 'bust')).toBeWithinMm(180, 1e-6);
    }
  });
});
