import type { ReadyBench } from '../fitting/bench.ts';
export default function RecordScreen({ bench }: { bench: ReadyBench }) {
  return <p>{bench.fitting.title}</p>;
}
