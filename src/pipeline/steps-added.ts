import type { Fitting, Step } from '../garment/index.ts';

/** Steps added after the other alterations and before the truing at the end, if there is one: what is trued stays trued. */
export function stepsAdded(fitting: Fitting, steps: readonly Step[]): Fitting {
  const last = fitting.steps.at(-1);
  const allTrue = last?.kind === 'true' && !last.seams && !last.off;
  if (!allTrue) return { ...fitting, steps: [...fitting.steps, ...steps] };
  const alter = steps.filter((s) => s.kind === 'alter');
  // What it trues already is not trued a second time.
  const rest = steps.filter((s) => s.kind === 'true' && (s.seams ?? s.keep));
  return { ...fitting, steps: [...fitting.steps.slice(0, -1), ...alter, last, ...rest] };
}
