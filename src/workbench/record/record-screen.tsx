import { useEffect, useState } from 'react';
import { seenAmounts, seenWords } from '../../alter/index.ts';
import { writeFitting, tellOf, renderPhrase } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { saveFile } from '../parts/save-file.ts';
import type { DocKey, Version } from '../store/kinds.ts';
import { store } from '../store/use-store.ts';
import { sizesSentence } from './sizes-sentence.ts';
import { PersonSheetPrint } from './sheet-print.tsx';
import { stepsToTell } from './steps-to-tell.ts';

/** Everything decided, as sentences; back to any of them; named versions; the printable sheet. */
export default function RecordScreen({ bench }: { bench: ReadyBench }) {
  const { held, fitting, change } = bench;
  return (
    <div className="record">
      <div className="stack">
        <section className="sheet stack tight" aria-labelledby="decided-head">
          <h2 id="decided-head">As it stands</h2>
          <Decided bench={bench} />
        </section>
        {fitting.observations.length > 0 && (
          <section className="sheet stack tight" aria-labelledby="trial-head">
            <h2 id="trial-head">Seen in the trial</h2>
            <SeenInTrial bench={bench} />
          </section>
        )}
        <label className="sheet field">
          <span className="label">Notes for whoever sews it</span>
          <textarea
            rows={4}
            value={fitting.notes}
            onChange={(e) => change((f) => ({ ...f, notes: e.target.value }), 'Wrote in the notes', 'notes')}
          />
        </label>
        <section className="sheet row">
          <label className="field wide">
            <span className="label">Title</span>
            <input
              type="text"
              value={fitting.title}
              onChange={(e) => change((f) => ({ ...f, title: e.target.value }), 'Changed the title', 'title')}
            />
          </label>
          <button
            type="button"
            className="act"
            onClick={() => saveFile(`${fitting.title}.json`, writeFitting(fitting), 'application/json')}
          >
            Save the fitting to a file
          </button>
          <button type="button" className="act" onClick={() => window.print()}>
            Print the sheet
          </button>
          <EraseFitting bench={bench} />
        </section>
      </div>
      <div className="stack">
        <Versions docKeyOf={held.key} changed={held.changed} />
        <Acts bench={bench} />
      </div>
      <PersonSheetPrint bench={bench} />
    </div>
  );
}

/** The steps and choices in force, in their order. */
function Decided({ bench }: { bench: ReadyBench }) {
  const { made, fitting } = bench;
  const tell = tellOf(bench.fitting.body);
  return (
    <ol className="decided">
      <li>{sizesSentence(made.plan, fitting.pattern, fitting.body.wearer)}</li>
      {stepsToTell(made.steps).map((s) => (
        <li key={s.step.id}>
          {s.step.off ? <s>{renderPhrase(s.sentence, tell)}</s> : renderPhrase(s.sentence, tell)}
          {s.step.kind === 'alter' && s.step.answers && <small> — from the trial notes</small>}
          {s.step.note && <small> — {s.step.note}</small>}
        </li>
      ))}
    </ol>
  );
}

/** The notes of the trial, with amounts and in the fitter's own words. */
function SeenInTrial({ bench: { fitting } }: { bench: ReadyBench }) {
  const tell = tellOf(fitting.body);
  return (
    <ul>
      {fitting.observations.map((seen) => {
        const amounts = seenAmounts(seen);
        return (
          <li key={seen.id}>
            {renderPhrase(seenWords(seen), tell)}
            {amounts && `: ${renderPhrase(amounts, tell)}`}
            {seen.note && <small> — {seen.note}</small>}
          </li>
        );
      })}
    </ul>
  );
}

function Acts({ bench }: { bench: ReadyBench }) {
  const { held } = bench;
  const [acts, setActs] = useState<readonly { n: number; say: string; on: string }[]>([]);
  useEffect(() => {
    let wanted = true;
    void store.sentences(held.key).then((found) => wanted && setActs(found));
    return () => {
      wanted = false;
    };
  }, [held.key, held.last, held.changed]);
  return (
    <section className="sheet stack tight" aria-labelledby="acts-head">
      <h2 id="acts-head">Everything done, newest first</h2>
      <p className="small">Go back to any line: what came after stays until something new is done.</p>
      <ol className="acts" reversed>
        {acts.toReversed().map((a) => (
          <li key={a.n} data-later={a.n > held.at || undefined}>
            <button
              type="button"
              className="act quiet"
              aria-current={a.n === held.at ? 'step' : undefined}
              onClick={() => void store.move(held.key, () => a.n)}
            >
              {a.say}
            </button>
            <small>
              {new Date(a.on).toLocaleString(undefined, {
                day: 'numeric',
                month: 'short',
                hour: '2-digit',
                minute: '2-digit',
              })}
            </small>
          </li>
        ))}
      </ol>
    </section>
  );
}

function Versions({ docKeyOf, changed }: { docKeyOf: DocKey; changed: string }) {
  const [name, setName] = useState('');
  const [versions, setVersions] = useState<readonly Version[]>([]);
  const [n, setN] = useState(0);
  useEffect(() => {
    let wanted = true;
    void store.versions(docKeyOf).then((found) => wanted && setVersions(found));
    return () => {
      wanted = false;
    };
  }, [docKeyOf, changed, n]);
  return (
    <section className="sheet stack tight" aria-labelledby="versions-head">
      <h2 id="versions-head">Named versions</h2>
      <form
        className="row"
        onSubmit={(e) => {
          e.preventDefault();
          if (!name.trim()) return;
          void store.keepVersion(docKeyOf, name.trim()).then(() => setN((x) => x + 1));
          setName('');
        }}
      >
        <input
          type="text"
          aria-label="Name of the version"
          placeholder="first test garment"
          value={name}
          onChange={(e) => setName(e.target.value)}
        />
        <button type="submit" className="act">
          Keep as it stands
        </button>
      </form>
      <ul>
        {versions.map((v) => (
          <li key={v.id} className="row spread">
            <span>
              {v.name} <small>{new Date(v.on).toLocaleDateString()}</small>
            </span>
            <button type="button" className="act quiet" onClick={() => store.restore(v)}>
              Go back to it<span className="unseen">: {v.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function EraseFitting({ bench }: { bench: ReadyBench }) {
  const [sure, setSure] = useState(false);
  if (!sure) {
    return (
      <button type="button" className="act quiet" onClick={() => setSure(true)}>
        Erase this fitting …
      </button>
    );
  }
  return (
    <span className="row" role="group" aria-label="Erase this fitting?">
      Erase it with all its versions?
      <button
        type="button"
        className="act main"
        onClick={() => {
          void store.erase([bench.held.key]);
          location.hash = '#/';
        }}
      >
        Erase
      </button>
      <button type="button" className="act" onClick={() => setSure(false)}>
        Keep
      </button>
    </span>
  );
}
