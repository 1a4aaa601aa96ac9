/** Solves a small square system in place by Gauss with row pivoting. Null where it has no single answer. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const n = right.length;
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const largest = Math.max(...rows.flatMap((row) => row.map(Math.abs)));
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = i;
    const lead = rows[pivot]![k]!;
    // Relative to the largest entry: below it, nothing but rounding is left.
    if (!(Math.abs(lead) > largest * 1e-14)) return null;
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    for (let i = k + 1; i < n; i++) {
      const f = rows[i]![k]! / lead;
      if (f === 0) continue;
      for (let j = k; j <= n; j++) rows[i]![j]! -= f * rows[k]![j]!;
    }
  }
  const out = Array.from({ length: n }, () => 0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = rows[i]![n]!;
    for (let j = i + 1; j < n; j++) sum -= rows[i]![j]! * out[j]!;
    out[i] = sum / rows[i]![i]!;
  }
  return out.every(Number.isFinite) ? out : null;
}

/** Least squares by normal equations: rows · x ≈ right. Null where the rows do not decide x. */
export function leastSquares(
  rows: readonly (readonly number[])[],
  right: readonly number[],
): number[] | null {
  const n = rows[0]?.length ?? 0;
  const normal = Array.from({ length: n }, () => Array.from({ length: n }, () => 0));
  const side = Array.from({ length: n }, () => 0);
  rows.forEach((row, i) => {
    for (let a = 0; a < n; a++) {
      side[a]! += row[a]! * right[i]!;
      for (let b = 0; b < n; b++) normal[a]![b]! += row[a]! * row[b]!;
    }
  });
  return solve(normal, side);
}
