import type { MadeStep } from '../worker/bench-worker.ts';

/** The steps a record tells of: truing that found nothing to do is no news, least of all where there are no pieces to true. */
export const stepsToTell = (steps: readonly MadeStep[]): readonly MadeStep[] =>
  steps.filter(({ step, changes }) => step.kind !== 'true' || step.off || changes.length > 0);
