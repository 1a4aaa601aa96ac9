import type { Proposal } from '../../alter/index.ts';
import type { Fitting } from '../../garment/index.ts';
import { trialProposals, type createPipeline } from '../../pipeline/index.ts';

/** What the notes of a trial propose. Loaded when a trial is looked at: no plan needs the table of what can be seen. */
export const trialAnswers = (
  fitting: Fitting,
  pipeline: ReturnType<typeof createPipeline>,
): readonly Proposal[] => trialProposals(fitting, pipeline);
