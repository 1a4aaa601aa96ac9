import type { Fitting, Pattern } from '../../garment/index.ts';
import { patternMark } from '../store/shared-pattern.ts';
import type { BenchDoings, Made, MakeAsk } from './bench-worker.ts';
import { Caller, heard, Latest } from '../call/index.ts';
import { dropOldest } from './patterns-there.ts';

const start = (): Worker =>
  new Worker(new URL('./bench-worker.ts', import.meta.url), { type: 'module', name: 'bench' });
/** The worker that makes fittings: nothing that computes runs on the page's own thread. */
export const bench = new Caller<BenchDoings>(start, () => sent.clear());

/** Marks of the patterns that the worker holds. */
const sent = new Set<string>();

/** A fitting as it goes to the worker: the pattern goes along once. */
export function askOf(fitting: Fitting, step?: string): MakeAsk {
  const { pattern, ...rest } = fitting;
  const mark = patternMark(pattern);
  const asked = { rest, mark, ...(step ? { step } : {}) };
  if (sent.has(mark)) return asked;
  sent.add(mark);
  dropOldest(sent);
  return { ...asked, pattern };
}

let last: Made | null = null;
const latest = new Latest<{ fitting: Fitting; step?: string }, Made>(async ({ fitting, step }) => {
  const began = performance.now();
  last = heard<Made>(last, await bench.call('make', askOf(fitting, step)));
  performance.measure('made', { start: began });
  return last;
});

/** Makes a fitting; the newest wish wins, the ones overtaken are never answered. */
export function makeLatest(
  fitting: Fitting,
  step: string | undefined,
  done: (made: Made) => void,
  failed: (error: Error) => void,
): void {
  latest.ask({ fitting, ...(step ? { step } : {}) }, done, failed);
}

export const draftSample = (id: string): Promise<Pattern> => bench.call('sample', id);

/** How long the first page is left to itself before the worker is fetched, ms. */
const QUIET_MS = 1500;
/** Fetches the worker while nothing is asked of it, so that the first fitting need not wait for its script. */
export function readyBench(): void {
  setTimeout(() => void bench.call('ready').catch(() => {}), QUIET_MS);
}
