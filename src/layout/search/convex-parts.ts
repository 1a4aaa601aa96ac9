import type { Flat } from './flat.ts';

const turn = (p: Flat, a: number, b: number, c: number): number =>
  (p[2 * b]! - p[2 * a]!) * (p[2 * c + 1]! - p[2 * a + 1]!) -
  (p[2 * b + 1]! - p[2 * a + 1]!) * (p[2 * c]! - p[2 * a]!);

/** Ears cut one by one, the fattest first; parts are merged after. */
function triangles(p: Flat): number[][] {
  const left = Array.from({ length: p.length / 2 }, (_, i) => i);
  const out: number[][] = [];
  while (left.length > 3) {
    let best = -1;
    let bestScore = -Infinity;
    for (let i = 0; i < left.length; i++) {
      const a = left[(i + left.length - 1) % left.length]!;
      const b = left[i]!;
      const c = left[(i + 1) % left.length]!;
      const area = turn(p, a, b, c);
      if (area <= 0) continue;
      let clear = true;
      for (const k of left) {
        if (k === a || k === b || k === c) continue;
        if (turn(p, a, b, k) >= 0 && turn(p, b, c, k) >= 0 && turn(p, c, a, k) >= 0) {
          // A point that coincides with a corner of the ear does not spoil it.
          const same = (m: number): boolean => p[2 * m] === p[2 * k] && p[2 * m + 1] === p[2 * k + 1];
          if (same(a) || same(b) || same(c)) continue;
          clear = false;
          break;
        }
      }
      if (!clear) continue;
      const chord = Math.hypot(p[2 * a]! - p[2 * c]!, p[2 * a + 1]! - p[2 * c + 1]!);
      const score = area / (chord * chord);
      if (score > bestScore) {
        bestScore = score;
        best = i;
      }
    }
    // Only numerically degenerate corners are left: drop the flattest, it bounds no area.
    if (best < 0) {
      let flattest = Infinity;
      for (let i = 0; i < left.length; i++) {
        const area = Math.abs(
          turn(p, left[(i + left.length - 1) % left.length]!, left[i]!, left[(i + 1) % left.length]!),
        );
        if (area < flattest) {
          flattest = area;
          best = i;
        }
      }
      left.splice(best, 1);
      continue;
    }
    out.push([left[(best + left.length - 1) % left.length]!, left[best]!, left[(best + 1) % left.length]!]);
    left.splice(best, 1);
  }
  if (left.length === 3 && turn(p, left[0]!, left[1]!, left[2]!) > 0) out.push([...left]);
  return out;
}

const convex = (p: Flat, ids: readonly number[]): boolean =>
  ids.every((b, i) => turn(p, ids[(i + ids.length - 1) % ids.length]!, b, ids[(i + 1) % ids.length]!) >= 0);

/**
 * Convex parts whose union is the polygon: triangulated by ears, then neighbours merged while the union stays convex
 * (Hertel and Mehlhorn 1983: at most four times the least number).
 */
export function convexParts(p: Flat): Flat[] {
  let parts = triangles(p);
  for (let merged = true; merged;) {
    merged = false;
    search: for (let i = 0; i < parts.length; i++) {
      for (let j = i + 1; j < parts.length; j++) {
        const a = parts[i]!;
        const b = parts[j]!;
        for (let u = 0; u < a.length; u++) {
          const s = a[u]!;
          const t = a[(u + 1) % a.length]!;
          const v = b.indexOf(t);
          if (v < 0 || b[(v + 1) % b.length] !== s) continue;
          const union: number[] = [];
          for (let k = 1; k <= a.length; k++) union.push(a[(u + k) % a.length]!);
          for (let k = 2; k < b.length; k++) union.push(b[(v + k) % b.length]!);
          if (!convex(p, union)) continue;
          parts = parts.filter((_, k) => k !== i && k !== j);
          parts.push(union);
          merged = true;
          break search;
        }
      }
    }
  }
  return parts.map((ids) => Float64Array.from(ids.flatMap((k) => [p[2 * k]!, p[2 * k + 1]!])));
}
