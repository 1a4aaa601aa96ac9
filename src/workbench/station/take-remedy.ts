import { tellOf, renderPhrase } from '../../garment/index.ts';
import type { Finding } from '../../garment/index.ts';
import type { ReadyBench } from './bench.ts';
import { addSteps } from '../../desk/index.ts';

type Remedy = NonNullable<Finding['remedy']>;

/** Does what a finding proposes. A remedy's own ids may be in the list already; a step is known by its id alone. */
export function takeRemedy(bench: ReadyBench, remedy: Remedy): void {
  const steps = remedy.steps.map((s) => ({ ...s, id: crypto.randomUUID().slice(0, 8) }));
  bench.change(addSteps(...steps), renderPhrase(remedy.say, tellOf(bench.fitting.body)));
}
