import type { Fitting, Garment, Pattern } from '../../garment/index.ts';
import { answerCalls } from './call.ts';
import { make } from './compose.ts';
import { reuse } from './reuse.ts';

/** A fitting without its pattern, and the pattern once, under its mark: the pattern is large and seldom changes. */
export interface MakeAsk {
  readonly rest: Omit<Fitting, 'pattern'>;
  readonly mark: string;
  readonly pattern?: Pattern;
}

/** Everything the page shows of a made fitting. */
export interface Made extends Omit<ReturnType<typeof make>, 'garment' | 'blended'> {
  readonly garment: Garment;
  /** The same garment before the alterations. */
  readonly blended: Garment;
}

const patterns = new Map<string, Pattern>();
let last: Omit<Fitting, 'pattern'> | null = null;

/** The fitting asked for, with every part that did not change as the object it was before: the pipeline's memos go by identity. */
function fittingOf(ask: MakeAsk): Fitting {
  if (ask.pattern) patterns.set(ask.mark, ask.pattern);
  const pattern = patterns.get(ask.mark);
  if (!pattern) throw new Error('The pattern has not reached the worker.');
  last = reuse(last, ask.rest);
  return { ...last, pattern };
}

const doings = {
  make: (ask: MakeAsk): Made => make(fittingOf(ask)),
  samples: async () => (await import('../../samples/index.ts')).SAMPLES,
  sample: async (id: string) => (await import('../../samples/index.ts')).sample(id),
};
export type BenchDoings = typeof doings;

answerCalls(doings);
