import { useState } from 'react';
import { seenAmounts, seenWords } from '../../alter/index.ts';
import { renderPhrase, tellIn, type Observation } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { NoteForm } from './note-form.tsx';
import { PhotoRow } from './photo-row.tsx';
import { Proposals } from './proposals.tsx';
import { LinePick } from './line-pick.tsx';
import type { SightLine } from './sight-lines.ts';
import { TrialFigure } from './trial-figure.tsx';

/** What was seen on the body or form, and what to do about it. */
export default function TrialScreen({ bench }: { bench: ReadyBench }) {
  const [line, setLine] = useState<SightLine | null>(null);
  return (
    <div className="trial">
      <section className="sheet trial-figures" aria-label="Point at what you see">
        <TrialFigure bench={bench} view="front" chosen={line} onChoose={setLine} />
        <TrialFigure bench={bench} view="back" chosen={line} onChoose={setLine} />
        <p className="small">
          Put the test garment on the person or the form, mark the waist with a cord, then point at a line
          that is not where it should be.
        </p>
        <LinePick garment={bench.made.garment} onChoose={setLine} />
      </section>
      <div className="stack">
        {line && (
          <section className="sheet">
            <NoteForm
              key={`${line.line.id}/${line.view}`}
              bench={bench}
              chosen={line}
              onDone={() => setLine(null)}
            />
          </section>
        )}
        <section className="sheet stack tight" aria-labelledby="seen-head">
          <h2 id="seen-head">Seen so far</h2>
          {bench.fitting.observations.length === 0 && !line && (
            <p>Nothing noted yet. Point at a line of the garment: its waist, its hem, a seam.</p>
          )}
          <ul className="seen">
            {bench.fitting.observations.map((o) => (
              <Seen key={o.id} seen={o} bench={bench} />
            ))}
          </ul>
        </section>
        <Proposals bench={bench} />
      </div>
    </div>
  );
}

function Seen({ seen, bench }: { seen: Observation; bench: ReadyBench }) {
  const tell = tellIn(bench.show);
  const words = renderPhrase(seenWords(seen), tell);
  const amounts = seenAmounts(seen);
  return (
    <li className="stack tight">
      <div className="row spread">
        <span>
          {words}
          {amounts && `: ${renderPhrase(amounts, tell)}`}
        </span>
        <button
          type="button"
          className="act quiet"
          aria-label={`Strike out: ${words}`}
          onClick={() =>
            bench.change(
              (f) => ({ ...f, observations: f.observations.filter((o) => o.id !== seen.id) }),
              `Struck out: ${words}`,
            )
          }
        >
          Strike out
        </button>
      </div>
      {seen.note && <p className="small">{seen.note}</p>}
      {seen.photos && <PhotoRow ids={seen.photos} words={words} />}
    </li>
  );
}
