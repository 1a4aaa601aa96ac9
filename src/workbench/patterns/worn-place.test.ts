// Pieces are rectangles; the landmarks are the figure's own.
import { t } from '../../garment/index.ts';
import { expect, it } from 'vitest';
import { linePath } from '../../geometry/index.ts';
import { bodyShape } from '../drawing/body-shape.ts';
import type { FoundPiece } from './read-worker.ts';
import { wornPlace } from './worn-place.ts';

const shape = bodyShape({
  id: 'nobody',
  name: '',
  wearer: 'woman',
  show: 'cm',
  waist: 'unsaid',
  readings: {},
});
/** 200 wide, 400 high, its left lower corner at 1000, 2000. */
function piece(found: Partial<FoundPiece['found']>, roles: readonly ('neck' | 'waist')[] = []): FoundPiece {
  const corners = [
    { x: 1000, y: 2000 },
    { x: 1200, y: 2000 },
    { x: 1200, y: 2400 },
    { x: 1000, y: 2400 },
  ];
  return {
    id: 'p',
    name: 'p',
    words: [],
    evidence: t``,
    paths: [],
    follows: false,
    found: { confidence: 1, because: null, otherwise: [], ...found },
    edges: corners.map((corner, i) => ({
      id: `${i}`,
      name: `${i}`,
      kind: 'seam' as const,
      worn: linePath(corner, corners[(i + 1) % 4]!),
      found: { confidence: 1, because: null, otherwise: [], ...(roles[i] ? { role: roles[i] } : {}) },
    })),
  };
}

it('a front hangs from the neck point with its centre on the body’s', () => {
  const place = wornPlace(piece({ role: 'front', half: 'front' }, ['neck']), shape);
  expect(place.left).toBe(0);
  expect(place.top).toBe(shape.points.sideNeck.y);
  expect(place.bottom - place.top).toBeCloseTo(400, 6);
  // Own x 1000 lies on the centre, own top 2400 at the neck point.
  expect(1000 + place.dx).toBe(0);
  expect(place.dy - 2400).toBeCloseTo(shape.points.sideNeck.y, 6);
});

it('a piece without neck, shoulder or armhole hangs from the waist', () =>
  expect(wornPlace(piece({ role: 'front', half: 'front' }, ['waist']), shape).top).toBe(
    shape.levels.waist.y,
  ));

it('a sleeve hangs along the arm, a collar stands on the neck, a waistband goes round the waist', () => {
  const sleeve = wornPlace(piece({ role: 'sleeve', half: 'arm' }), shape);
  expect((sleeve.left + sleeve.right) / 2).toBeCloseTo(shape.points.elbow.x, 6);
  expect(wornPlace(piece({ role: 'collar', half: 'both' }), shape).bottom).toBeCloseTo(
    shape.points.sideNeck.y,
    6,
  );
  expect(wornPlace(piece({ role: 'waistband', half: 'both' }), shape).top).toBe(shape.levels.waist.y);
});
