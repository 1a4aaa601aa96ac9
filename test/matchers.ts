import { expect } from 'vitest';

/** Domain matchers: lengths in mm compared with a stated tolerance in mm. */
expect.extend({
  toBeWithinMm(received: number, expected: number, tolerance: number) {
    const off = Math.abs(received - expected);
    return {
      pass: Number.isFinite(received) && off <= tolerance,
      message: () => `expected ${received} to be within ${tolerance} mm of ${expected} (off by ${off})`,
    };
  },
});

declare module 'vitest' {
  // oxlint-disable-next-line typescript/no-explicit-any -- vitest's own signature
  interface Matchers<T = any> {
    /** |received − expected| ≤ tolerance, all mm. */
    toBeWithinMm(expected: number, tolerance: number): T;
  }
}
