import { describe, expect, it } from 'vitest';
import { lengthAtPlace } from './length.ts';
import { polylinePath } from './path.ts';
import { lengthRuler } from './ruler.ts';
import { throughPoints } from './through.ts';

describe('a length ruler', () => {
  const curve = throughPoints([
    { x: 0, y: 0 },
    { x: 60, y: 20 },
    { x: 100, y: 90 },
    { x: 90, y: 160 },
    { x: 140, y: 200 },
  ]);

  it('agrees with the bounded quadrature to a hundredth of a millimetre, and exactly at the joints', () => {
    const ruler = lengthRuler(curve);
    for (let cubic = 0; cubic < (curve.length - 1) / 3; cubic++) {
      for (let t = 0; t <= 1.0001; t += 0.05) {
        const place = { cubic, t: Math.min(1, t) };
        expect(ruler(cubic, place.t)).toBeWithinMm(lengthAtPlace(curve, place), 0.01);
      }
      expect(ruler(cubic, 1)).toBe(lengthAtPlace(curve, { cubic, t: 1 }));
    }
  });

  it('measures straight runs as they are (3-4-5)', () => {
    const ruler = lengthRuler(
      polylinePath([
        { x: 0, y: 0 },
        { x: 30, y: 40 },
        { x: 30, y: 100 },
      ]),
    );
    expect(ruler(0, 0.5)).toBeCloseTo(25, 9);
    expect(ruler(1, 0.5)).toBeCloseTo(80, 9);
  });
});
