import { useEffect, useRef, useState } from 'react';
import { renderPhrase, tellIn, type Observation } from '../../garment/index.ts';
import { LengthField } from '../parts/length-field.tsx';
import { amountText } from '../parts/amount.tsx';
import type { ReadyBench } from '../station/bench.ts';
import { DIRECTION_WORDS, type SightLine } from './sight-lines.ts';
import { PhotoRow } from './photo-row.tsx';
import { keepPhoto } from './photos.ts';

/** What is seen on one line: how it sits, and by how much at its two ends. */
export function NoteForm({
  bench,
  line,
  onDone,
}: {
  bench: ReadyBench;
  line: SightLine;
  onDone: () => void;
}) {
  const [direction, setDirection] = useState(line.directions[0]!);
  const [centre, setCentre] = useState<number | undefined>(undefined);
  const [side, setSide] = useState<number | undefined>(undefined);
  const [note, setNote] = useState('');
  const [photos, setPhotos] = useState<readonly string[]>([]);
  const head = useRef<HTMLHeadingElement>(null);
  // Where the figure fills the screen the form opens below it: one is taken there, and so is a screen reader.
  useEffect(() => {
    head.current?.focus({ preventScroll: true });
    head.current?.closest('form')?.scrollIntoView({ block: 'nearest' });
  }, []);
  const { show, change, held } = bench;
  const tell = tellIn(show);
  const [first, second] = line.ends;
  const apart = line.apart === true;

  function keep(): void {
    if (centre === undefined) return;
    const seen: Observation = {
      id: crypto.randomUUID().slice(0, 8),
      line: line.line,
      where: line.view,
      direction,
      centre,
      side: side ?? (second && !apart ? centre : 0),
      ...(note.trim() ? { note: note.trim() } : {}),
      ...(photos.length ? { photos } : {}),
    };
    change(
      (f) => ({ ...f, observations: [...f.observations, seen] }),
      `Seen: ${line.name} ${DIRECTION_WORDS[direction]}, ${amountText(centre, show)}`,
    );
    onDone();
  }

  return (
    <form
      className="stack tight"
      aria-label={`What is seen: ${line.name}`}
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <h2 ref={head} tabIndex={-1}>
        The {line.name} …
      </h2>
      <div className="choice" role="group" aria-label="How it sits">
        {line.directions.map((d) => (
          <button
            key={d}
            type="button"
            className="act"
            aria-pressed={d === direction}
            onClick={() => setDirection(d)}
          >
            {DIRECTION_WORDS[d]}
          </button>
        ))}
      </div>
      <div className="row about">
        <LengthField
          label={renderPhrase(first, tell)}
          mm={centre}
          show={show}
          narrow
          live
          onAmount={setCentre}
        />
        {second && (
          <LengthField
            label={renderPhrase(second, tell)}
            mm={side}
            show={show}
            signed
            narrow
            live
            placeholder={apart ? '' : 'the same'}
            onAmount={setSide}
          />
        )}
      </div>
      <label className="field">
        <span className="label">In your own words</span>
        <textarea rows={2} value={note} onChange={(e) => setNote(e.target.value)} />
      </label>
      {photos.length > 0 && (
        <PhotoRow
          ids={photos}
          words={`the ${line.name}`}
          onDrop={(id) => setPhotos(photos.filter((p) => p !== id))}
        />
      )}
      <label className="act filepick">
        {photos.length ? 'Attach another photograph' : 'Attach a photograph (it stays on this machine)'}
        <input
          type="file"
          accept="image/*"
          multiple
          className="unseen"
          onChange={(event) => {
            const files = [...(event.target.files ?? [])];
            event.target.value = '';
            void Promise.all(files.map((f) => keepPhoto(held.key, f))).then((ids) =>
              setPhotos((p) => [...p, ...ids.filter((id) => id !== null)]),
            );
          }}
        />
      </label>
      <div className="row">
        <button type="submit" className="act main" disabled={centre === undefined}>
          Note it
        </button>
        <button type="button" className="act quiet" onClick={onDone}>
          Leave
        </button>
      </div>
    </form>
  );
}
