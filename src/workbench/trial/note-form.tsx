import { useEffect, useRef, useState } from 'react';
import { likelyPlace, placeWords, seenWords, sightWords } from '../../alter/index.ts';
import { renderPhrase, tellOf, type Observation } from '../../garment/index.ts';
import { LengthField } from '../parts/length-field.tsx';
import { amountText } from '../parts/amount.tsx';
import type { ReadyBench } from '../station/bench.ts';
import type { SightLine } from './sight-lines.ts';
import { PhotoRow } from './photo-row.tsx';
import { dropPhotos, keepPhoto } from './photos.ts';

type Direction = Observation['direction'];

interface Props {
  readonly bench: ReadyBench;
  readonly chosen: SightLine;
  /** The note that is changed; a new one is taken where there is none. */
  readonly had?: Observation | undefined;
  readonly onDone: () => void;
}

/** What is seen on one line: how it sits, where, and by how much. Amounts may be left out: then it is a note in words. */
export function NoteForm({ bench, chosen: { line, view }, had, onDone }: Props) {
  const { show, change, held } = bench;
  const directions = Object.keys(line.sights) as Direction[];
  const [direction, setDirection] = useState(
    had && directions.includes(had.direction) ? had.direction : directions[0]!,
  );
  const [said, setPlace] = useState(had?.where);
  const [centre, setCentre] = useState(had?.centre);
  const [side, setSide] = useState(had?.side);
  const [note, setNote] = useState(had?.note ?? '');
  const [photos, setPhotos] = useState<readonly string[]>([]);
  const head = useRef<HTMLHeadingElement>(null);
  // Where the figure fills the screen the form opens below it: one is taken there, and so is a screen reader.
  useEffect(() => {
    head.current?.focus({ preventScroll: true });
    head.current?.closest('form')?.scrollIntoView({ block: 'nearest' });
  }, []);
  // A photograph that goes into no note is kept nowhere: not after Cancel, nor when another line is pointed at.
  const loose = useRef<readonly string[]>([]);
  const open = useRef(false);
  useEffect(() => {
    open.current = true;
    return () => {
      open.current = false;
      void dropPhotos(loose.current);
    };
  }, []);
  async function attach(files: readonly File[]): Promise<void> {
    const ids = (await Promise.all(files.map((f) => keepPhoto(held.key, f)))).filter((id) => id !== null);
    if (!open.current) return dropPhotos(ids);
    loose.current = [...loose.current, ...ids];
    setPhotos(loose.current);
  }
  const tell = tellOf(bench.fitting.body);
  const sight = line.sights[direction]!;
  const where = said && sight.places.includes(said) ? said : likelyPlace(sight, view);
  const [first, second] = sight.ends;

  function keep(): void {
    const all = [...(had?.photos ?? []), ...photos];
    const seen: Observation = {
      id: had?.id ?? crypto.randomUUID().slice(0, 8),
      line: line.id,
      where,
      direction,
      ...(centre === undefined ? {} : { centre }),
      ...(side === undefined || second === null ? {} : { side }),
      ...(note.trim() ? { note: note.trim() } : {}),
      ...(all.length ? { photos: all } : {}),
    };
    loose.current = [];
    const amount = centre ?? side;
    change(
      (f) => ({
        ...f,
        observations: had
          ? f.observations.map((o) => (o.id === had.id ? seen : o))
          : [...f.observations, seen],
      }),
      `${had ? 'Noted anew' : 'Seen'}: ${renderPhrase(seenWords(seen), tell)}${amount === undefined ? '' : `, ${amountText(amount, show)}`}`,
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
        {directions.map((d) => (
          <button
            key={d}
            type="button"
            className="act"
            aria-pressed={d === direction}
            onClick={() => setDirection(d)}
          >
            {renderPhrase(sightWords(line, d), tell)}
          </button>
        ))}
      </div>
      {sight.places.length > 1 && (
        <div className="choice" role="group" aria-label="Where it is seen">
          {sight.places.map((p) => (
            <button
              key={p}
              type="button"
              className="act"
              aria-pressed={p === where}
              onClick={() => setPlace(p)}
            >
              {renderPhrase(placeWords(p), tell)}
            </button>
          ))}
        </div>
      )}
      <div className="row about">
        <LengthField
          label={renderPhrase(first, tell)}
          mm={centre}
          show={show}
          signed={second !== null}
          narrow
          live
          onAmount={setCentre}
          onClear={() => setCentre(undefined)}
        />
        {second && (
          <LengthField
            label={renderPhrase(second, tell)}
            mm={side}
            show={show}
            signed
            narrow
            live
            onAmount={setSide}
            onClear={() => setSide(undefined)}
          />
        )}
      </div>
      <p className="small">
        {second ? 'One of the two is enough. ' : ''}Without an amount it is kept as a note, and nothing is
        proposed yet.
      </p>
      <label className="field">
        <span className="label">In your own words</span>
        <textarea rows={2} value={note} onChange={(e) => setNote(e.target.value)} />
      </label>
      {photos.length > 0 && (
        <PhotoRow
          ids={photos}
          words={`the ${line.name}`}
          onDrop={(id) => {
            loose.current = loose.current.filter((p) => p !== id);
            setPhotos(loose.current);
            void dropPhotos([id]);
          }}
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
            void attach(files);
          }}
        />
      </label>
      <div className="row">
        <button type="submit" className="act main">
          Note it
        </button>
        <button type="button" className="act quiet" onClick={onDone}>
          Cancel
        </button>
      </div>
    </form>
  );
}
