import { describe, expect, it } from 'vitest';
import { wornOnce } from '../garment/index.ts';
import type { DrawnPiece, EdgeRole } from '../garment/index.ts';
import { measure } from './quantity.ts';
import { at, garment, levelLine, polygon } from '../../test/drawn.ts';
import { linePath } from '../geometry/index.ts';

/** A half front by hand: centre upright from 0 to 400, side from (200, 0) to (230, 300), shoulder from (150, 380) down to it; waist at 100. */
const corners = [at(0, 0), at(200, 0), at(230, 300), at(80, 400), at(0, 400)];
const ROLES: readonly EdgeRole[] = ['hem', 'side', 'shoulder', 'neck', 'centre'];
const front = (id: string, more: Partial<DrawnPiece> = {}): DrawnPiece => {
  const drawn = polygon(id, corners, [...ROLES], {
    lines: [levelLine('waist', linePath(at(0, 100), at(210, 100)))],
    ...more,
  });
  return {
    ...drawn,
    half: 'front',
    edges: drawn.edges.map((e, i) => ({ ...e, role: ROLES[i]!, from: i === 3 || i === 4 ? 'neck' : 'hem' })),
  };
};

describe('edges measured by what they are', () => {
  it('is as long as its line, or as high as its ends lie apart (side: √(30² + 300²) and 300)', () => {
    const g = garment([front('front')]);
    const side = (as: 'along' | 'up') => measure(g, { is: 'length', role: 'side', half: 'front', as });
    expect(side('along')).toMatchObject({ left: Math.hypot(30, 300) });
    expect(side('up')).toMatchObject({ left: 300, right: 300 });
  });

  it('stops at a level where its drawn line ends: 300 above the waist, 100 below', () => {
    const g = garment([front('front')]);
    const centre = (part: { above?: string; below?: string }) =>
      measure(g, { is: 'length', role: 'centre', half: 'front', as: 'up', ...part }) as { left: number };
    expect(centre({ above: 'waist' }).left).toBeWithinMm(300, 1e-6);
    expect(centre({ below: 'waist' }).left).toBeWithinMm(100, 1e-6);
  });

  it('measures left and right each once they are pieces of their own', () => {
    const right = front('front-right', { worn: wornOnce('right') });
    const longer = right.edges.map((e) =>
      e.role === 'neck' ? { ...e, path: linePath(at(80, 400), at(0, 430)) } : e,
    );
    const g = garment([front('front-left', { worn: wornOnce('left') }), { ...right, edges: longer }]);
    const neck = measure(g, { is: 'length', role: 'neck', half: 'front', as: 'along' });
    expect(neck).toMatchObject({ left: 80, right: Math.hypot(80, 30) });
  });

  it('says which level or which edge is not there', () => {
    const g = garment([front('front')]);
    expect(measure(g, { is: 'length', role: 'side', half: 'front', as: 'up', above: 'hip' })).toEqual({
      missing: 'level',
      level: 'hip',
    });
    expect(measure(g, { is: 'length', role: 'armhole', half: 'front', as: 'along' })).toEqual({
      missing: 'edge',
      role: 'armhole',
      half: 'front',
    });
    expect(measure(g, { is: 'girth', level: 'bust' })).toEqual({ missing: 'level', level: 'bust' });
    expect(measure(g, { is: 'cap-ease' })).toEqual({ missing: 'sleeve' });
  });

  it('tells how far the shoulder falls: 100 from neck to tip', () => {
    expect(measure(garment([front('front')]), { is: 'shoulder-drop', half: 'front' })).toMatchObject({
      left: 100,
    });
  });
});
