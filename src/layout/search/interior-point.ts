/**
 * A linear programme in inequality form: least cost · z with rows · z ≥ bound. Rows are sparse, at most five entries each.
 * Solved by a primal-dual interior point method with Mehrotra's predictor and corrector (1992); all rows are kept scaled near one by the caller.
 */
export interface Rows {
  /** Number of variables. */
  readonly vars: number;
  /** Entries a row; variable −1 where unused. */
  readonly index: Int32Array;
  readonly value: Float64Array;
  readonly bound: Float64Array;
  readonly count: number;
}

export const WIDTH = 5;

/** In place lower Cholesky factor of the n × n matrix m; tiny pivots are made large, which holds that variable still. */
function factor(m: Float64Array, n: number, first: Int32Array): void {
  for (let i = 0; i < n; i++) {
    const ri = i * n;
    for (let j = first[i]!; j <= i; j++) {
      const rj = j * n;
      let sum = m[ri + j]!;
      for (let k = Math.max(first[i]!, first[j]!); k < j; k++) sum -= m[ri + k]! * m[rj + k]!;
      if (j < i) m[ri + j] = sum / m[rj + j]!;
      else m[ri + i] = sum > 1e-14 ? Math.sqrt(sum) : 1e64;
    }
  }
}

function solve(m: Float64Array, n: number, first: Int32Array, x: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = x[i]!;
    for (let k = first[i]!; k < i; k++) sum -= m[i * n + k]! * x[k]!;
    x[i] = sum / m[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    const xi = (x[i] = x[i]! / m[i * n + i]!);
    for (let k = first[i]!; k < i; k++) x[k] = x[k]! - m[i * n + k]! * xi;
  }
}

/** The least-cost point, or null where the method did not settle. Starts from z = 0. */
export function leastCost(rows: Rows, cost: Float64Array): Float64Array | null {
  const { vars: n, count: m, index, value, bound } = rows;
  const z = new Float64Array(n);
  const s = new Float64Array(m);
  const y = new Float64Array(m);
  const ds = new Float64Array(m);
  const dy = new Float64Array(m);
  const dsAff = new Float64Array(m);
  const dyAff = new Float64Array(m);
  const rp = new Float64Array(m);
  const rc = new Float64Array(m);
  const rd = new Float64Array(n);
  const dz = new Float64Array(n);
  const matrix = new Float64Array(n * n);
  // The profile: first column of each row of the matrix, which does not change. Variables sorted along the strip keep it narrow.
  const first = Int32Array.from({ length: n }, (_, i) => i);
  for (let r = 0; r < m; r++) {
    let low = n;
    for (let e = r * WIDTH; e < (r + 1) * WIDTH; e++) if (index[e]! >= 0 && index[e]! < low) low = index[e]!;
    for (let e = r * WIDTH; e < (r + 1) * WIDTH; e++) {
      const v = index[e]!;
      if (v >= 0 && low < first[v]!) first[v] = low;
    }
  }
  for (let r = 0; r < m; r++) {
    s[r] = Math.max(0.02, -bound[r]!);
    y[r] = 0.02 / s[r]!;
  }
  const row = (r: number, v: Float64Array): number => {
    let sum = 0;
    for (let e = r * WIDTH; e < (r + 1) * WIDTH; e++) if (index[e]! >= 0) sum += value[e]! * v[index[e]!]!;
    return sum;
  };
  const direction = (): void => {
    for (let i = 0; i < n; i++) dz[i] = -rd[i]!;
    for (let r = 0; r < m; r++) {
      const t = (rc[r]! + y[r]! * rp[r]!) / s[r]!;
      for (let e = r * WIDTH; e < (r + 1) * WIDTH; e++)
        if (index[e]! >= 0) dz[index[e]!] = dz[index[e]!]! + value[e]! * t;
    }
    solve(matrix, n, first, dz);
    for (let r = 0; r < m; r++) {
      ds[r] = row(r, dz) - rp[r]!;
      dy[r] = (rc[r]! - y[r]! * ds[r]!) / s[r]!;
    }
  };
  const room = (v: Float64Array, d: Float64Array): number => {
    let a = 1;
    for (let r = 0; r < m; r++) if (d[r]! < 0 && -v[r]! / d[r]! < a) a = -v[r]! / d[r]!;
    return a;
  };
  for (let round = 0; round < 40; round++) {
    rd.set(cost);
    let gap = 0;
    let worst = 0;
    for (let r = 0; r < m; r++) {
      rp[r] = bound[r]! - row(r, z) + s[r]!;
      worst = Math.max(worst, Math.abs(rp[r]!));
      gap += s[r]! * y[r]!;
      for (let e = r * WIDTH; e < (r + 1) * WIDTH; e++)
        if (index[e]! >= 0) rd[index[e]!] = rd[index[e]!]! - value[e]! * y[r]!;
    }
    const mu = gap / m;
    if (!(mu < 1e12)) return null;
    if (gap < 1e-9 && worst < 1e-10) return z;
    matrix.fill(0);
    for (let r = 0; r < m; r++) {
      const w = y[r]! / s[r]!;
      for (let e = r * WIDTH; e < (r + 1) * WIDTH; e++) {
        const a = index[e]!;
        if (a < 0) continue;
        const t = w * value[e]!;
        for (let g = r * WIDTH; g < (r + 1) * WIDTH; g++) {
          const b = index[g]!;
          if (b >= 0 && b <= a) matrix[a * n + b] = matrix[a * n + b]! + t * value[g]!;
        }
      }
    }
    factor(matrix, n, first);
    for (let r = 0; r < m; r++) rc[r] = -s[r]! * y[r]!;
    direction();
    const pa = room(s, ds);
    const da = room(y, dy);
    let ahead = 0;
    for (let r = 0; r < m; r++) ahead += (s[r]! + pa * ds[r]!) * (y[r]! + da * dy[r]!);
    const sigma = Math.min(1, (ahead / gap) ** 3);
    dsAff.set(ds);
    dyAff.set(dy);
    for (let r = 0; r < m; r++) rc[r] = sigma * mu - s[r]! * y[r]! - dsAff[r]! * dyAff[r]!;
    direction();
    const ps = Math.min(1, 0.995 * room(s, ds));
    const dd = Math.min(1, 0.995 * room(y, dy));
    for (let i = 0; i < n; i++) z[i] = z[i]! + ps * dz[i]!;
    for (let r = 0; r < m; r++) {
      s[r] = s[r]! + ps * ds[r]!;
      y[r] = y[r]! + dd * dy[r]!;
    }
  }
  return null;
}
