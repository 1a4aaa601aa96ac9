import { findingSentence } from '../../pipeline/index.ts';
import { tellOf, renderPhrase } from '../../garment/index.ts';
import { useEffect, useState } from 'react';
import { answeredBy, answering, type Proposal } from '../../alter/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { addSteps } from '../../desk/index.ts';
import { hrefTo } from '../station/route.ts';
import { askOf, bench as worker } from '../worker/bench.ts';

/** What the notes suggest, in a fitter's order; each accepted by itself, none by itself. */
export function Proposals({ bench }: { bench: ReadyBench }) {
  const { fitting, change } = bench;
  const tell = tellOf(bench.fitting.body);
  const [proposals, setProposals] = useState<readonly Proposal[]>([]);
  useEffect(() => {
    let wanted = true;
    void worker.call('observe', askOf(fitting)).then((found) => wanted && setProposals(found));
    return () => {
      wanted = false;
    };
  }, [fitting]);
  if (fitting.observations.length === 0) return null;
  return (
    <section className="sheet stack tight" aria-labelledby="proposals-head" aria-live="polite">
      <h2 id="proposals-head">What would settle it</h2>
      <p className="small">
        In the order a fitter works: length, then shoulder, then width. Accept one, try again, then go on.
      </p>
      <ol className="proposals">
        {proposals.map((p) => {
          const taken = answeredBy(fitting.steps, p);
          const sentence = renderPhrase(p.sentence, tell);
          return (
            <li key={`${p.step?.entry} ${p.from.join(' ')}`} className="stack tight">
              <p>
                <strong>{sentence}</strong>
              </p>
              <p className="small">{renderPhrase(p.why, tell)}</p>
              {[
                ...p.conflicts.map((c) => renderPhrase(c, tell)),
                ...(taken ? [] : p.warns.map((w) => findingSentence(w, tell))),
              ].map((c) => (
                <p key={c} className="small limit">
                  {c}
                </p>
              ))}
              {p.blocked && <p className="small limit">{findingSentence(p.blocked, tell)}</p>}
              {taken ? (
                <p className="small">
                  Accepted:{' '}
                  <a href={hrefTo('pieces', fitting.id, { step: taken.id })}>see it on the pieces</a>.
                </p>
              ) : (
                p.step &&
                !p.blocked && (
                  <button
                    type="button"
                    className="act main"
                    onClick={() =>
                      change(
                        addSteps(answering({ ...p.step!, id: crypto.randomUUID().slice(0, 8) }, p)),
                        `Accepted: ${sentence}`,
                      )
                    }
                  >
                    Accept<span className="unseen">: {sentence}</span>
                  </button>
                )
              )}
            </li>
          );
        })}
      </ol>
    </section>
  );
}
