import { describe, expect, it } from 'vitest';
import type { DrawnPiece } from '../../garment/index.ts';
import { linePath, type Point } from '../../geometry/index.ts';
import { labelPlace } from './label-place.ts';

function cutOut(corners: readonly Point[]): DrawnPiece {
  return {
    edges: corners.map((p, i) => ({ path: linePath(p, corners[(i + 1) % corners.length]!) })),
  } as unknown as DrawnPiece;
}
const at = (x: number, y: number): Point => ({ x, y });

describe('the place of a name', () => {
  it('is the middle of a wide rectangle, across it', () => {
    const {
      at: place,
      upright,
      fit,
    } = labelPlace(cutOut([at(0, 0), at(400, 0), at(400, 220), at(0, 220)]), 10);
    expect(upright).toBe(false);
    expect(Math.abs(place.x - 200)).toBeLessThan(30);
    expect(Math.abs(place.y - 110)).toBeLessThan(30);
    expect(fit).toBeGreaterThan(26);
  });

  it('is upright in a narrow strip', () => {
    const place = labelPlace(cutOut([at(0, 0), at(60, 0), at(60, 600), at(0, 600)]), 14);
    expect(place.upright).toBe(true);
    expect(place.fit).toBeGreaterThan(26);
  });

  it('keeps out of the hollow of an L, where the middle of its box is', () => {
    const place = labelPlace(
      cutOut([at(0, 0), at(400, 0), at(400, 80), at(80, 80), at(80, 400), at(0, 400)]),
      12,
    );
    expect(place.at.x < 80 || place.at.y < 80).toBe(true);
    expect(place.fit).toBeGreaterThan(20);
  });
});
