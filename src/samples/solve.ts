/** Good enough to stop: mm where `f` gives lengths, a hundredth of what a nest keeps. */
const CLOSE = 1e-5;
const ROUNDS = 80;

/**
 * The x in [lo, hi] at which `f` is zero to 10⁻⁵: drafting lengths that must match are found, not guessed.
 * False position, the standing end's weight halved each time it stands (the Illinois rule), so that one flat end cannot stall it.
 * Throws RangeError when `f` has one sign at both ends or does not come to rest.
 */
export function solve(f: (x: number) => number, lo: number, hi: number): number {
  let a = lo;
  let b = hi;
  let fa = f(a);
  let fb = f(b);
  if (Math.abs(fa) < CLOSE) return a;
  if (Math.abs(fb) < CLOSE) return b;
  if (fa > 0 === fb > 0 || !Number.isFinite(fa + fb)) {
    throw new RangeError(`no change of sign between ${lo} (${fa}) and ${hi} (${fb})`);
  }
  for (let i = 0; i < ROUNDS; i++) {
    const x = (a * fb - b * fa) / (fb - fa);
    const fx = f(x);
    if (Math.abs(fx) < CLOSE) return x;
    if (fx > 0 === fb > 0) {
      fa /= 2;
    } else {
      a = b;
      fa = fb;
    }
    b = x;
    fb = fx;
  }
  throw new RangeError(`no rest between ${lo} and ${hi}: still ${fb} off`);
}
