import { useMemo, useState } from 'react';
import { answersFrom, patternChanges } from '../../desk/index.ts';
import { renderPhrase, tellIn, writePattern } from '../../garment/index.ts';
import type { Bench } from '../station/bench.ts';
import { useDoc } from '../store/use-store.ts';

/** The pattern was corrected on its own page since this fitting took its copy: offered whole, with what is different; the fitting keeps its own until then. */
export function PatternChanged({ bench }: { bench: Bench }) {
  const { pattern } = bench.fitting;
  const kept = useDoc('pattern', pattern.id)?.doc;
  const [left, setLeft] = useState<string | null>(null);
  const changes = useMemo(
    () =>
      // Where answers to doubts are all that is new, they are offered by themselves.
      kept && writePattern(answersFrom(pattern, kept)) !== writePattern(kept)
        ? patternChanges(pattern, kept)
        : [],
    [pattern, kept],
  );
  if (!kept || changes.length === 0 || left === writePattern(kept)) return null;
  const tell = tellIn(bench.show);
  return (
    <div className="ask">
      <p>The pattern “{kept.name}” has changed since this fitting took its copy:</p>
      <ul>
        {changes.map((change) => {
          const words = renderPhrase(change, tell);
          return <li key={words}>{words}</li>;
        })}
      </ul>
      <p className="small">Your alterations stay; those that no longer find their edge say so.</p>
      <div className="row">
        <button
          type="button"
          className="act main"
          onClick={() =>
            bench.change((f) => ({ ...f, pattern: kept }), `Took over the changed pattern “${kept.name}”`)
          }
        >
          Take it over
        </button>
        <button type="button" className="act" onClick={() => setLeft(writePattern(kept))}>
          Keep the earlier one
        </button>
      </div>
    </div>
  );
}
