import { useMemo } from 'react';
import { answersFrom } from '../../desk/index.ts';
import type { Bench } from '../station/bench.ts';
import { useDoc } from '../store/use-store.ts';

/** On its own page the pattern was told what its pieces and edges are, since this fitting took its copy: offered, as new measures are. */
export function AnswersSaid({ bench }: { bench: Bench }) {
  const { pattern } = bench.fitting;
  const kept = useDoc('pattern', pattern.id)?.doc;
  const answered = useMemo(() => (kept ? answersFrom(pattern, kept) : pattern), [pattern, kept]);
  if (answered === pattern) return null;
  return (
    <div className="ask">
      <p>
        On the page of the pattern it was said, since this fitting was begun, what pieces and edges are that
        are still in doubt here.
      </p>
      <div className="row">
        <button
          type="button"
          className="act main"
          onClick={() =>
            bench.change(
              (f) => ({ ...f, pattern: answersFrom(f.pattern, kept!) }),
              'Took over what was said of the pattern',
            )
          }
        >
          Use those answers
        </button>
      </div>
    </div>
  );
}
