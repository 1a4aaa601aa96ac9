import { findingSentence } from '../../pipeline/index.ts';
import { tellOf, renderPhrase } from '../../garment/index.ts';
import { useEffect, useState } from 'react';
import type { Step, Tell } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { bench as worker } from '../worker/bench.ts';
import type { CatalogueEntry } from '../worker/entry-list.ts';
import { AlterForm } from './alter-form.tsx';
import { AlterList } from './alter-list.tsx';
import { addSteps, dropStep, moveStep, switchStep } from '../../desk/index.ts';

interface Props {
  readonly bench: ReadyBench;
  readonly step: string | null;
  readonly onStep: (id: string | null) => void;
}

let kept: readonly CatalogueEntry[] | null = null;

/** The catalogue as the worker tells it, fetched once. */
function useCatalogue(): readonly CatalogueEntry[] {
  const [entries, setEntries] = useState<readonly CatalogueEntry[]>(kept ?? []);
  useEffect(() => {
    if (kept) return;
    void worker.call('catalogue').then((found) => setEntries((kept = found)));
  }, []);
  return entries;
}

/** The alterations made so far, the one in hand with its amounts, and the catalogue to add from. */
export default function AlterPanel({ bench, step, onStep }: Props) {
  const catalogue = useCatalogue();
  const [adding, setAdding] = useState(false);
  const [fresh, setFresh] = useState<string | null>(null);
  const { fitting, made, change } = bench;
  const tell = tellOf(bench.fitting.body);
  const current = fitting.steps.find((s) => s.id === step);
  const entry = current?.kind === 'alter' ? catalogue.find((c) => c.id === current.entry) : undefined;

  function add(chosen: CatalogueEntry): void {
    const id = crypto.randomUUID().slice(0, 8);
    const params = Object.fromEntries(
      chosen.params.filter((p) => !('blank' in p && p.blank)).map((p) => [p.id, p.default]),
    );
    const fresh: Step = { id, kind: 'alter', entry: chosen.id, params };
    change(addSteps(fresh), `Added: ${renderPhrase(chosen.name, tell)}`);
    onStep(id);
    setFresh(id);
    setAdding(false);
  }

  if (adding || fitting.steps.length === 0) {
    return (
      <AlterList
        catalogue={catalogue}
        pattern={fitting.pattern}
        tell={tell}
        onPick={add}
        {...(fitting.steps.length ? { onLeave: () => setAdding(false) } : {})}
      />
    );
  }
  return (
    <>
      <div className="row spread">
        <h2>Alterations</h2>
        <button type="button" className="act main" onClick={() => setAdding(true)}>
          Add one
        </button>
      </div>
      <ol className="steps">
        {fitting.steps.map((s, i) => {
          const result = made.steps.find((r) => r.step.id === s.id);
          const open = s.id === step;
          return (
            <li key={s.id} data-off={s.off || undefined} data-open={open || undefined}>
              <button
                id={`step-${s.id}`}
                type="button"
                className="act quiet step-name"
                aria-expanded={open}
                onClick={() => onStep(open ? null : s.id)}
              >
                <span className="unseen">Step {i + 1}: </span>
                {s.off ? (
                  <s>{nameOf(s, catalogue, tell)}</s>
                ) : result ? (
                  renderPhrase(result.sentence, tell)
                ) : (
                  nameOf(s, catalogue, tell)
                )}
              </button>
              {open && (
                <div className="stack tight">
                  {s.kind === 'alter' && entry && (
                    <AlterForm bench={bench} step={s} entry={entry} fresh={fresh === s.id} />
                  )}
                  {s.kind === 'true' && (
                    <p className="small">
                      Evens the seams, runs the lines that cross them smooth or square, and re-places the
                      notches. It can be taken back like any other step.
                    </p>
                  )}
                  {result?.findings
                    .map((f) => findingSentence(f, tell))
                    .map((said) => (
                      <p key={said} className="small">
                        {said}
                      </p>
                    ))}
                  <div className="row">
                    <button
                      type="button"
                      className="act"
                      onClick={() =>
                        change(switchStep(s.id, !s.off), s.off ? 'Took a step back in' : 'Left a step out')
                      }
                    >
                      {s.off ? 'Take it back in' : 'Leave it out'}
                    </button>
                    <button
                      type="button"
                      className="act"
                      disabled={i === 0}
                      onClick={() => change(moveStep(s.id, -1), 'Moved a step earlier')}
                    >
                      Earlier
                    </button>
                    <button
                      type="button"
                      className="act"
                      disabled={i === fitting.steps.length - 1}
                      onClick={() => change(moveStep(s.id, 1), 'Moved a step later')}
                    >
                      Later
                    </button>
                    <button
                      type="button"
                      className="act"
                      onClick={() => {
                        change(dropStep(s.id), `Took out: ${nameOf(s, catalogue, tell)}`);
                        onStep(null);
                      }}
                    >
                      Take it out
                    </button>
                  </div>
                </div>
              )}
            </li>
          );
        })}
      </ol>
      {!fitting.steps.some((s) => s.kind === 'true') && (
        <button
          type="button"
          className="act"
          onClick={() =>
            change(addSteps({ id: crypto.randomUUID().slice(0, 8), kind: 'true' }), 'Trued all seams')
          }
        >
          True all seams
        </button>
      )}
    </>
  );
}

function nameOf(step: Step, catalogue: readonly CatalogueEntry[], tell: Tell): string {
  if (step.kind === 'true') return 'True the seams';
  const entry = catalogue.find((c) => c.id === step.entry);
  return entry ? renderPhrase(entry.name, tell) : step.entry;
}
