/**
 * Arc length against outside references: a general-purpose Bézier library and closed forms.
 * Sources: bezier-js 6.1.4 (npm, seen); closed forms of circle, parabola and semicubical parabola (calculus, derived);
 * perimeter of the ellipse by the arithmetic-geometric mean (Gauss; Abramowitz & Stegun 17.3 and 17.6, memory).
 */
import { Bezier } from 'bezier-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPath, pathLength, pathsArea } from '../src/geometry/index.ts';
import type { Path, Point } from '../src/geometry/index.ts';

/** The library's 24-point rule has no subdivision and errs by 0.2 mm at a cusp; over 256 parts it is a fair witness everywhere. */
function byLibrary(path: Path): number {
  let sum = 0;
  for (let i = 0; i + 3 < path.length; i += 3) {
    const curve = new Bezier(path.slice(i, i + 4).map(({ x, y }) => ({ x, y })));
    for (let k = 0; k < 256; k++) sum += curve.split(k / 256, (k + 1) / 256).length();
  }
  return sum;
}

const coordinate = fc.integer({ min: -40_000, max: 40_000 }).map((v) => v / 100);
const point = fc.record({ x: coordinate, y: coordinate });

const ring = (at: (angle: number) => Point, from: number, to: number, steps: number): Point[] =>
  Array.from({ length: steps + 1 }, (_, i) => at(from + ((to - from) * i) / steps));

describe('arc length', () => {
  it('agrees with bezier-js over 256 parts on any cubic, loops and near-cusps included', () => {
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const path = [a, b, c, d];
        expect(pathLength(path)).toBeWithinMm(byLibrary(path), 2e-5);
      }),
      { numRuns: 200, seed: 20261125 },
    );
  });

  it('of a cusp is that of its closed form', () => {
    // x = 100 u², y = 100 u³ for u in −1..1, a semicubical parabola (Neile 1657) with its cusp in the middle.
    // Length 2 · 100 · (13√13 − 8) / 27. With u = 2t − 1 its Bernstein values are (100, −100/3, −100/3, 100) and (−100, 100, −100, 100).
    const cusp: Path = [
      { x: 100, y: -100 },
      { x: -100 / 3, y: 100 },
      { x: -100 / 3, y: -100 },
      { x: 100, y: 100 },
    ];
    expect(pathLength(cusp)).toBeWithinMm((200 * (13 * Math.sqrt(13) - 8)) / 27, 1e-6);
  });

  it('of a parabola is that of its closed form', () => {
    // y = x²/400 from x = −200 to 200: ½·b·√(1+b²)·2/(2a) … with slope b = 1 at the ends: 2 · 200 · ½ (√2 + asinh 1).
    const arc: Path = [
      { x: -200, y: 100 },
      { x: -200 / 3, y: -100 / 3 },
      { x: 200 / 3, y: -100 / 3 },
      { x: 200, y: 100 },
    ];
    expect(pathLength(arc)).toBeWithinMm(200 * (Math.SQRT2 + Math.asinh(1)), 1e-6);
  });

  it('of a circle fitted to 10⁻⁴ mm is 2πr, and its area πr²', () => {
    const r = 150;
    const at = (a: number): Point => ({ x: r * Math.cos(a), y: r * Math.sin(a) });
    const path = fitPath(ring(at, 0, 2 * Math.PI, 2000), 1e-4, {
      startTangent: { x: 0, y: 1 },
      endTangent: { x: 0, y: 1 },
    });
    expect(pathLength(path)).toBeWithinMm(2 * Math.PI * r, 1e-3);
    expect(Math.abs(pathsArea([path]) - Math.PI * r * r)).toBeLessThan(0.1);
  });

  it('of an ellipse fitted to 10⁻⁴ mm is its perimeter by the arithmetic-geometric mean', () => {
    const [a, b] = [240, 90];
    const at = (t: number): Point => ({ x: a * Math.cos(t), y: b * Math.sin(t) });
    const path = fitPath(ring(at, 0, 2 * Math.PI, 4000), 1e-4, {
      startTangent: { x: 0, y: 1 },
      endTangent: { x: 0, y: 1 },
    });
    // Perimeter = 2π (a² − Σ 2^(n−1) cₙ²) / AGM(a, b), c₀² = a² − b².
    let [x, y] = [a, b];
    let sum = (a * a - b * b) / 2;
    for (let n = 1; n < 30; n++) {
      const c = (x - y) / 2;
      [x, y] = [(x + y) / 2, Math.sqrt(x * y)];
      sum += 2 ** (n - 1) * c * c;
    }
    expect(pathLength(path)).toBeWithinMm((2 * Math.PI * (a * a - sum)) / x, 2e-3);
    expect(Math.abs(pathsArea([path]) - Math.PI * a * b)).toBeLessThan(0.2);
  });
});
