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

/** Value at t of the cubic with these Bernstein values. */
function valueAt(b0: number, b1: number, b2: number, b3: number, t: number): number {
  const s = 1 - t;
  return s * s * s * b0 + 3 * s * s * t * b1 + 3 * s * t * t * b2 + t * t * t * b3;
}

function rootsInside(b0: number, b1: number, b2: number, b3: number, touch: number): number[] {
  const a3 = b3 - 3 * b2 + 3 * b1 - b0;
  const a2 = 3 * (b2 - 2 * b1 + b0);
  const a1 = 3 * (b1 - b0);
  const turns = quadraticRoots(3 * a3, 2 * a2, a1);
  const out: number[] = [];
  let border = 0;
  let atBorder = b0;
  for (let i = 0; i <= turns.length; i++) {
    const next = i < turns.length ? turns[i]! : 1;
    if (i < turns.length && !(next > 0 && next < 1)) continue;
    const from = border;
    const atFrom = atBorder;
    border = next;
    atBorder = valueAt(b0, b1, b2, b3, border);
    if (Math.abs(atFrom) <= touch && (from > 0 || atFrom === 0)) {
      put(out, from);
      if (atBorder * atFrom >= 0) continue;
    }
    if (atFrom === 0 || atFrom * atBorder > 0) continue;
    put(out, atBorder === 0 ? border : rootBetween(b0, b1, b2, b3, from, border, atFrom, atBorder));
  }
  return out;
}

function put(out: number[], t: number): void {
  if (out.length === 0 || t - out[out.length - 1]! > 1e-12) out.push(t);
}

/** The zero between two places at which the signs differ, by Newton held between them. */
function rootBetween(
  b0: number,
  b1: number,
  b2: number,
  b3: number,
  from: number,
  to: number,
  atFrom: number,
  atTo: number,
): number {
  const a3 = b3 - 3 * b2 + 3 * b1 - b0;
  const a2 = 3 * (b2 - 2 * b1 + b0);
  const a1 = 3 * (b1 - b0);
  const rising = atFrom < 0;
  let lo = from;
  let hi = to;
  let t = lo + ((hi - lo) * -atFrom) / (atTo - atFrom);
  for (let k = 0; k < 80; k++) {
    const ft = valueAt(b0, b1, b2, b3, t);
    if (ft === 0) break;
    if (ft < 0 === rising) lo = t;
    else hi = t;
    const d = a1 + t * (2 * a2 + t * 3 * a3);
    let next = d !== 0 ? t - ft / d : (lo + hi) / 2;
    if (!(next > lo && next < hi)) next = (lo + hi) / 2;
    if (Math.abs(next - t) < 1e-16) break;
    t = next;
  }
  return t;
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
