/** A curve y(x) through knots: its value and its slope anywhere; held level outside of the knots. */
export interface Monotone {
  value(x: number): number;
  slope(x: number): number;
}

/**
 * Slopes at the knots of the smooth curve that never overshoots them, level at both ends: the harmonic means of
 * Fritsch & Butland (SIAM J. Sci. Stat. Comput. 5, 1984), which keep the monotony condition of Fritsch & Carlson (1980).
 */
export function monotoneSlopes(xs: readonly number[], ys: readonly number[]): readonly number[] {
  const slopes = xs.map(() => 0);
  for (let i = 1; i + 1 < xs.length; i++) {
    const before = (ys[i]! - ys[i - 1]!) / (xs[i]! - xs[i - 1]!);
    const after = (ys[i + 1]! - ys[i]!) / (xs[i + 1]! - xs[i]!);
    // Not rising or not falling on both sides (or knots in one place): level.
    if (!(before * after > 0)) continue;
    const h0 = xs[i]! - xs[i - 1]!;
    const h1 = xs[i + 1]! - xs[i]!;
    // Weighted by the wider neighbour (Brodlie's form), so that a short run does not steepen a long one.
    const share = (h0 + 2 * h1) / (3 * (h0 + h1));
    slopes[i] = (before * after) / (share * after + (1 - share) * before);
  }
  return slopes;
}

/**
 * The smooth curve through the knots that never overshoots them: between two knots it stays between their values, its slope
 * is continuous, and it leaves the first and reaches the last knot level. Piecewise cubic Hermite with `monotoneSlopes`.
 * `xs` increases strictly; at least one knot.
 */
export function monotone(xs: readonly number[], ys: readonly number[]): Monotone {
  const n = xs.length;
  const slopes = monotoneSlopes(xs, ys);
  const run = (x: number): number => {
    let i = 0;
    while (i + 2 < n && x > xs[i + 1]!) i++;
    return i;
  };
  const outside = (x: number): boolean => n < 2 || x <= xs[0]! || x >= xs[n - 1]!;
  return {
    value(x) {
      if (outside(x)) return x <= xs[0]! ? ys[0]! : ys[n - 1]!;
      const i = run(x);
      const h = xs[i + 1]! - xs[i]!;
      const u = (x - xs[i]!) / h;
      const u2 = u * u;
      const u3 = u2 * u;
      return (
        (2 * u3 - 3 * u2 + 1) * ys[i]! +
        (u3 - 2 * u2 + u) * h * slopes[i]! +
        (3 * u2 - 2 * u3) * ys[i + 1]! +
        (u3 - u2) * h * slopes[i + 1]!
      );
    },
    slope(x) {
      if (outside(x)) return 0;
      const i = run(x);
      const h = xs[i + 1]! - xs[i]!;
      const u = (x - xs[i]!) / h;
      const u2 = u * u;
      return (
        ((6 * u2 - 6 * u) * ys[i]! + (6 * u - 6 * u2) * ys[i + 1]!) / h +
        (3 * u2 - 4 * u + 1) * slopes[i]! +
        (3 * u2 - 2 * u) * slopes[i + 1]!
      );
    },
  };
}
