import type { MeasureId } from '../garment/index.ts';
import type { Survey } from './plausibility-table.ts';

/** Precision matrix (inverse covariance) and means of the measures asked for, in the survey's order. */
export interface Joint {
  readonly measures: readonly MeasureId[];
  readonly mean: readonly number[];
  readonly precision: readonly (readonly number[])[];
}

/** Lower Cholesky factor of a symmetric positive definite matrix given by its lower triangle. */
function cholesky(a: readonly (readonly number[])[]): number[][] {
  const l: number[][] = [];
  for (let i = 0; i < a.length; i++) {
    l.push([]);
    for (let j = 0; j <= i; j++) {
      let sum = a[i]![j]!;
      for (let k = 0; k < j; k++) sum -= l[i]![k]! * l[j]![k]!;
      l[i]!.push(i === j ? Math.sqrt(sum) : sum / l[j]![j]!);
    }
  }
  return l;
}

/** Solves L Lᵀ x = e_c: one column of the inverse. */
function column(l: readonly (readonly number[])[], c: number): number[] {
  const n = l.length;
  const x = Array.from<number>({ length: n }).fill(0);
  for (let i = 0; i < n; i++) {
    let sum = i === c ? 1 : 0;
    for (let k = 0; k < i; k++) sum -= l[i]![k]! * x[k]!;
    x[i] = sum / l[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let k = i + 1; k < n; k++) sum -= l[k]![i]! * x[k]!;
    x[i] = sum / l[i]![i]!;
  }
  return x;
}

/**
 * The survey's joint distribution of some of its measures.
 * @param widen factor on every standard deviation, for bodies the survey did not admit
 */
export function joint(survey: Survey, has: (id: MeasureId) => boolean, widen: number): Joint {
  const keep = survey.measures.map((_, i) => i).filter((i) => has(survey.measures[i]!));
  const lower = keep.map((i, a) =>
    keep.slice(0, a + 1).map((j) => survey.covariance[i]![j]! * widen * widen),
  );
  const factor = cholesky(lower);
  return {
    measures: keep.map((i) => survey.measures[i]!),
    mean: keep.map((i) => survey.mean[i]!),
    precision: keep.map((_, c) => column(factor, c)),
  };
}

/** Precision times deviation from the mean. */
export function pull(j: Joint, values: readonly number[]): number[] {
  return j.precision.map((row) => row.reduce((sum, p, k) => sum + p * (values[k]! - j.mean[k]!), 0));
}

/** How many standard deviations a measure lies from what all the others lead one to expect. */
export function surprise(j: Joint, values: readonly number[], i: number): number {
  return pull(j, values)[i]! / Math.sqrt(j.precision[i]![i]!);
}
