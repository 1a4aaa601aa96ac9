import type { Step } from '../../garment/index.ts';
import type { AlterStep } from '../step/apply-step.ts';
import type { Proposal } from './observe.ts';

/** The step with which a proposal is recorded: it names the observations it answers. */
export const answering = (step: AlterStep, { from }: Proposal): AlterStep => ({ ...step, answers: from });

/** The step that was accepted for a proposal: the same alteration, for all of its observations. Undefined while it was not. */
export const answeredBy = (steps: readonly Step[], { step, from }: Proposal): Step | undefined =>
  steps.find(
    (s) => s.kind === 'alter' && s.entry === step?.entry && from.every((id) => s.answers?.includes(id)),
  );
