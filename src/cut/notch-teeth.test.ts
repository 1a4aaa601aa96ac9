import { describe, expect, it } from 'vitest';
import { quarter } from '../../test/drawn.ts';
import { distance, linePath } from '../geometry/index.ts';
import { NOTCH_GAP_MM, notchTeeth } from './notch-teeth.ts';

const straight = linePath({ x: 0, y: 0 }, { x: 100, y: 0 });
const xs = (share: number, count: 1 | 2 | 3, path = straight): number[] =>
  notchTeeth(path, share, count).map((t) => Math.round(t.foot.x * 1e9) / 1e9);

describe('the teeth of a notch', () => {
  it('stand about its place, one gap apart, pointing into the piece', () => {
    expect(xs(0.5, 1)).toEqual([50]);
    expect(xs(0.5, 2)).toEqual([50 - NOTCH_GAP_MM / 2, 50 + NOTCH_GAP_MM / 2]);
    expect(xs(0.5, 3)).toEqual([50 - NOTCH_GAP_MM, 50, 50 + NOTCH_GAP_MM]);
    for (const { inward } of notchTeeth(straight, 0.5, 3)) {
      expect(inward.x).toBeCloseTo(0, 12);
      expect(inward.y).toBe(1);
    }
  });

  it('stand one gap of arc apart on a deep curve', () => {
    // On a circle of radius r an arc of g is a chord of 2 r sin(g / 2r).
    const r = 20;
    const [a, b, c] = notchTeeth(quarter({ x: 0, y: 0 }, r), 0.4, 3);
    const chord = 2 * r * Math.sin(NOTCH_GAP_MM / (2 * r));
    expect(distance(a!.foot, b!.foot)).toBeWithinMm(chord, 0.01);
    expect(distance(b!.foot, c!.foot)).toBeWithinMm(chord, 0.01);
  });

  it('all stand on the edge: beside a corner one stands at it and the others keep their places', () => {
    expect(xs(0, 3)).toEqual([0, 0, NOTCH_GAP_MM]);
    expect(xs(0.99, 2)).toEqual([99 - NOTCH_GAP_MM / 2, 100]);
  });
});
