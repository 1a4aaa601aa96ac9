import type { ReadyBench } from '../fitting/bench.ts';
export default function ClothScreen({ bench }: { bench: ReadyBench }) {
  return <p>{bench.fitting.title}</p>;
}
