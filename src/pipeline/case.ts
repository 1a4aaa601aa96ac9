import type { Fitting, Garment, Plan } from '../garment/index.ts';
import type { StepResult } from './make.ts';

/** What a remedy is chosen by. */
export interface Case {
  readonly fitting: Fitting;
  readonly plan: Plan;
  readonly planned: Garment;
  /** As the steps left it. */
  readonly garment: Garment;
  readonly steps: readonly StepResult[];
  /** The pattern as printed, in the size nearest to the base: what truing goes by. */
  readonly reference: Garment;
}
