import { useRef, useState } from 'react';
import { observableOf, seenAmounts, seenWords, type Observable } from '../../alter/index.ts';
import { renderPhrase, tellOf, type Observation } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { NoteForm } from './note-form.tsx';
import { PhotoRow } from './photo-row.tsx';
import { dropPhotos } from './photos.ts';
import { Proposals } from './proposals.tsx';
import { LinePick } from './line-pick.tsx';
import type { SightLine } from './sight-lines.ts';
import { TrialFigure } from './trial-figure.tsx';

/** What was seen on the body or form, and what to do about it. */
export default function TrialScreen({ bench }: { bench: ReadyBench }) {
  const [line, setLine] = useState<(SightLine & { readonly note?: string }) | null>(null);
  const seen = useRef<HTMLHeadingElement>(null);
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
              key={`${line.line.id}/${line.view}/${line.note}`}
              bench={bench}
              chosen={line}
              had={bench.fitting.observations.find((o) => o.id === line.note)}
              onDone={() => {
                setLine(null);
                seen.current?.focus();
              }}
            />
          </section>
        )}
        <section className="sheet stack tight" aria-labelledby="seen-head">
          <h2 id="seen-head" ref={seen} tabIndex={-1}>
            Seen so far
          </h2>
          {bench.fitting.observations.length === 0 && !line && (
            <p>Nothing noted yet. Point at a line of the garment: its waist, its hem, a seam.</p>
          )}
          <ul className="seen">
            {bench.fitting.observations.map((o) => (
              <Seen
                key={o.id}
                seen={o}
                bench={bench}
                onChange={(of) =>
                  setLine({ line: of, view: o.where === 'back' ? 'back' : 'front', note: o.id })
                }
              />
            ))}
          </ul>
        </section>
        <Proposals bench={bench} />
      </div>
    </div>
  );
}

function without({ photos, ...seen }: Observation, id: string): Observation {
  const left = (photos ?? []).filter((p) => p !== id);
  return left.length ? { ...seen, photos: left } : seen;
}

interface SeenProps {
  readonly seen: Observation;
  readonly bench: ReadyBench;
  readonly onChange: (line: Observable) => void;
}

function Seen({ seen, bench, onChange }: SeenProps) {
  const line = observableOf(seen.line);
  const tell = tellOf(bench.fitting.body);
  const words = renderPhrase(seenWords(seen), tell);
  const amounts = seenAmounts(seen);
  return (
    <li className="stack tight">
      <div className="row spread">
        <span>
          {words}
          {amounts && `: ${renderPhrase(amounts, tell)}`}
        </span>
        {line && (
          <button
            type="button"
            className="act quiet"
            aria-label={`Change: ${words}`}
            onClick={() => onChange(line)}
          >
            Change
          </button>
        )}
        <button
          type="button"
          className="act quiet"
          aria-label={`Strike out: ${words}`}
          onClick={() => {
            const gone = seen.photos ?? [];
            bench.change(
              (f) => ({ ...f, observations: f.observations.filter((o) => o.id !== seen.id) }),
              `Struck out: ${words}${gone.length ? ' (its photographs are gone for good)' : ''}`,
            );
            void dropPhotos(gone);
          }}
        >
          Strike out
        </button>
      </div>
      {seen.note && <p className="small">{seen.note}</p>}
      {seen.photos && (
        <PhotoRow
          ids={seen.photos}
          words={words}
          onDrop={(id) => {
            bench.change(
              (f) => ({
                ...f,
                observations: f.observations.map((o) => (o.id === seen.id ? without(o, id) : o)),
              }),
              `Struck out for good: a photograph of ${words}`,
            );
            void dropPhotos([id]);
          }}
        />
      )}
    </li>
  );
}
