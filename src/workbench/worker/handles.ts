import { alterationOf } from '../../alter/index.ts';
import type { Fitting } from '../../garment/index.ts';
import type { createPipeline } from '../../pipeline/index.ts';
import { gripsOf, TRY, type Grip } from './grips.ts';
import { amountIn, slopeBetween, type Slope } from './slopes.ts';

type Pipeline = ReturnType<typeof createPipeline>;

/** What a step is taken by on the pieces, and how they go along with each of its amounts. */
export interface Handles {
  readonly grips: readonly Grip[];
  readonly slopes: readonly Slope[];
}

/** Each amount of a step tried a little larger or smaller, through the whole stack after it. */
function slopesOf(fitting: Fitting, id: string, pipeline: Pipeline): readonly Slope[] {
  const step = fitting.steps.find((s) => s.id === id);
  if (step?.kind !== 'alter' || step.off) return [];
  const { garment } = pipeline.make(fitting);
  return (alterationOf(step.entry)?.params ?? []).flatMap((param): Slope[] => {
    const amount = amountIn(fitting, id, param.id);
    if (amount === undefined || (param.kind !== 'length' && param.kind !== 'angle')) return [];
    const by = amount + TRY <= param.max ? TRY : -TRY;
    const tried: Fitting = {
      ...fitting,
      steps: fitting.steps.map((s) =>
        s === step ? { ...step, params: { ...step.params, [param.id]: amount + by } } : s,
      ),
    };
    return [{ param: param.id, pieces: slopeBetween(garment, pipeline.make(tried).garment, by) }];
  });
}

/** Loaded when a step is looked at on the pieces: no plan needs it. */
export const handlesOf = (fitting: Fitting, step: string, pipeline: Pipeline): Handles => ({
  grips: gripsOf(pipeline.make(fitting), step),
  slopes: slopesOf(fitting, step, pipeline),
});
