import type { Bench } from '../station/bench.ts';
import { AnswersSaid } from './answers-said.tsx';
import { PatternChanged } from './pattern-changed.tsx';

/** Answers to doubts by themselves, and a pattern changed in more than those. */
export default function PatternAsks({ bench }: { bench: Bench }) {
  return (
    <>
      <AnswersSaid bench={bench} />
      <PatternChanged bench={bench} />
    </>
  );
}
