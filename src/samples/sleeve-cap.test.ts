import { describe, expect, it } from 'vitest';
import { pathEnd, pathLength, pathStart } from '../geometry/index.ts';
import { FITTED_BACK, FITTED_FRONT, FLAT, sleeveCap } from './sleeve-cap.ts';

describe('sleeveCap', () => {
  it('has the lengths and the width asked for, whatever they are', () => {
    for (const width of [280, 320, 380]) {
      for (const [front, back] of [
        [width * 0.6, width * 0.63],
        [width * 0.56, width * 0.58],
      ] as const) {
        const cap = sleeveCap({
          width,
          frontLength: front,
          backLength: back,
          frontShape: FITTED_FRONT,
          backShape: FITTED_BACK,
        });
        expect(pathLength(cap.front)).toBeCloseTo(front, 3);
        expect(pathLength(cap.back)).toBeCloseTo(back, 3);
        expect(cap.frontWidth + cap.backWidth).toBeCloseTo(width, 6);
        expect(pathStart(cap.front)).toEqual(pathEnd(cap.back));
      }
    }
  });

  it('is lower when the sleeve is wider: the same armhole, more room to lift the arm', () => {
    const height = (width: number) =>
      sleeveCap({ width, frontLength: 200, backLength: 210, frontShape: FLAT, backShape: FLAT }).height;
    expect(height(300)).toBeGreaterThan(height(330));
    expect(height(330)).toBeGreaterThan(height(360));
  });

  it('refuses a sleeve wider than its cap is long', () => {
    expect(() =>
      sleeveCap({ width: 420, frontLength: 200, backLength: 210, frontShape: FLAT, backShape: FLAT }),
    ).toThrow(RangeError);
  });
});
