/**
 * Zeros in 0..1 of a cubic given by its four Bernstein values, ascending. Cut at the extrema into runs that only rise or only
 * fall, each halved by Newton kept inside its bracket. A touching zero (an extremum no further than `touch` from 0) counts once.
 */
export function cubicRoots(b0: number, b1: number, b2: number, b3: number, touch: number): number[] {
  if ((b0 > 0 && b1 > 0 && b2 > 0 && b3 > 0) || (b0 < 0 && b1 < 0 && b2 < 0 && b3 < 0)) {
    if (Math.min(Math.abs(b0), Math.abs(b1), Math.abs(b2), Math.abs(b3)) > touch) return [];
  }
  return rootsInside(b0, b1, b2, b3, touch);
}

function rootsInside(b0: number, b1: number, b2: number, b3: number, touch: number): number[] {
  const a3 = b3 - 3 * b2 + 3 * b1 - b0;
  const a2 = 3 * (b2 - 2 * b1 + b0);
  const a1 = 3 * (b1 - b0);
  const f = (t: number): number => {
    const s = 1 - t;
    return s * s * s * b0 + 3 * s * s * t * b1 + 3 * s * t * t * b2 + t * t * t * b3;
  };
  const df = (t: number): number => a1 + t * (2 * a2 + t * 3 * a3);
  const borders = [0, ...quadraticRoots(3 * a3, 2 * a2, a1).filter((t) => t > 0 && t < 1), 1];
  const out: number[] = [];
  const put = (t: number): void => {
    if (out.length === 0 || t - out[out.length - 1]! > 1e-12) out.push(t);
  };
  for (let i = 0; i + 1 < borders.length; i++) {
    let lo = borders[i]!;
    let hi = borders[i + 1]!;
    const fLo = f(lo);
    const fHi = f(hi);
    if (Math.abs(fLo) <= touch && (i > 0 || Math.abs(fLo) === 0)) {
      put(lo);
      if (fHi * fLo >= 0) continue;
    }
    if (Math.abs(fLo) === 0) continue;
    if (fLo * fHi > 0) continue;
    if (fHi === 0) {
      put(hi);
      continue;
    }
    const rising = fLo < 0;
    let t = lo + ((hi - lo) * -fLo) / (fHi - fLo);
    for (let k = 0; k < 80; k++) {
      const ft = f(t);
      if (ft === 0) break;
      if (ft < 0 === rising) lo = t;
      else hi = t;
      const d = df(t);
      let next = d !== 0 ? t - ft / d : (lo + hi) / 2;
      if (!(next > lo && next < hi)) next = (lo + hi) / 2;
      if (Math.abs(next - t) < 1e-16) break;
      t = next;
    }
    put(t);
  }
  return out;
}

/** Real zeros of a t² + b t + c, ascending; by the form that loses no digits (Numerical Recipes 5.6). */
export function quadraticRoots(a: number, b: number, c: number): number[] {
  if (a === 0) return b === 0 ? [] : [-c / b];
  const d = b * b - 4 * a * c;
  if (d < 0) return [];
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(d));
  const r = q === 0 ? [0] : [q / a, c / q];
  return r.length === 2 && r[0]! > r[1]! ? [r[1]!, r[0]!] : r;
}
