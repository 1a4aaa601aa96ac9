import type { ReadyBench } from '../fitting/bench.ts';
export function Proposals({ bench }: { bench: ReadyBench }) {
  return bench.fitting.observations.length > 0 ? null : null;
}
