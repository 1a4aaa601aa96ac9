import { describe, expect, it } from 'vitest';
import { solve } from './solve.ts';

describe('solve', () => {
  it('finds where a function is zero', () => {
    expect(solve((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 5);
    expect(solve((x) => 3 - x, 0, 10)).toBeCloseTo(3, 8);
  });

  it('is not stalled by a flat end', () => {
    expect(solve((x) => x ** 9 - 1e-3, 0, 4)).toBeCloseTo(1e-3 ** (1 / 9), 3);
  });

  it('refuses an interval without a change of sign', () => {
    expect(() => solve((x) => x * x + 1, -1, 1)).toThrow(/no change of sign between -1 \(2\) and 1 \(2\)/);
    expect(() => solve(() => NaN, 0, 1)).toThrow(RangeError);
  });
});
