import { useEffect, useMemo, useState } from 'react';
import type { Corrections, PieceCorrection, Progress } from '../../exchange/index.ts';
import type { GarmentKind } from '../../garment/index.ts';
import { boxAround, pathBox } from '../../geometry/index.ts';
import { pathD } from '../drawing/path-d.ts';
import { LengthField } from '../parts/length-field.tsx';
import { Sign } from '../parts/sign.tsx';
import { Waiting } from '../parts/waiting.tsx';
import { usualUnit } from '../people/new-person.ts';
import { go, hrefTo } from '../route.ts';
import { store } from '../store/use-store.ts';
import { Caller } from '../worker/call.ts';
import { takeFile } from './waiting-file.ts';
import type { Found, FoundPiece, ReadDoings } from './read-worker.ts';

const GARMENTS: readonly GarmentKind[] = ['bodice', 'dress', 'top', 'skirt', 'trousers', 'jacket', 'smock'];

/** A drawn pattern as it was found in a file: every guess with its reason, nothing kept until it is said to be right. */
export function FromFile() {
  const [file] = useState(takeFile);
  const reader = useMemo(
    () =>
      new Caller<ReadDoings>(
        () => new Worker(new URL('./read-worker.ts', import.meta.url), { type: 'module', name: 'read' }),
      ),
    [],
  );
  const [found, setFound] = useState<Found | null>(null);
  const [progress, setProgress] = useState<Progress | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [scaleBy, setScaleBy] = useState('');

  useEffect(() => {
    if (!file) return undefined;
    let wanted = true;
    setFound(null);
    setTrouble(null);
    void file.arrayBuffer().then((buffer) =>
      reader
        .call(
          'read',
          { bytes: new Uint8Array(buffer), name: file.name, ...(scaleBy ? { scaleBy } : {}) },
          ((p: Progress) => wanted && setProgress(p)) as never,
        )
        .then((result) => wanted && setFound(result))
        .catch((error: Error) => wanted && setTrouble(error.message)),
    );
    return () => {
      wanted = false;
      reader.stop();
    };
  }, [file, reader, scaleBy]);

  if (!file) {
    return (
      <p className="said">
        No file is waiting here. <a href={hrefTo('patterns')}>Back to the patterns</a>
      </p>
    );
  }
  return (
    <div className="stack">
      <h1>From “{file.name}”</h1>
      {!found && !trouble && (
        <Waiting
          words={progress?.doing ?? 'Reading the file'}
          share={progress ? progress.done / Math.max(1, progress.total) : 0}
          onStop={() => {
            reader.stop();
            setTrouble('Stopped. Nothing was kept.');
          }}
        />
      )}
      {trouble && (
        <p className="said" role="alert">
          {trouble}
        </p>
      )}
      {found && <Looked found={found} reader={reader} scaleBy={scaleBy} onScale={setScaleBy} />}
    </div>
  );
}

interface LookedProps {
  readonly found: Found;
  readonly reader: Caller<ReadDoings>;
  readonly scaleBy: string;
  readonly onScale: (words: string) => void;
}

/** What was found, with the few things only a person can know. */
function Looked({ found, reader, scaleBy, onScale }: LookedProps) {
  const show = usualUnit(navigator.languages);
  const [name, setName] = useState(found.name.replace(/\.[^.]+$/, ''));
  const [garment, setGarment] = useState<GarmentKind>('top');
  const [wearer, setWearer] = useState<'woman' | 'man' | 'child'>('woman');
  const [included, setIncluded] = useState(0);
  const [pieces, setPieces] = useState<Readonly<Record<string, PieceCorrection>>>({});
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [scale, setScale] = useState(scaleBy);
  const [busy, setBusy] = useState(false);

  function keep(): void {
    setBusy(true);
    const said: Corrections = {
      name: name.trim() || found.name,
      garment,
      wearer,
      pieces,
      ...(included > 0 ? { included } : {}),
      ...(refused.length ? { seams: { reject: refused } } : {}),
    };
    reader
      .call('make', said)
      .then(({ pattern, findings }) => {
        const fresh = { ...pattern, id: crypto.randomUUID() };
        store.create('pattern', fresh, `Brought in from ${found.name}`);
        for (const f of findings.filter((x) => x.severity !== 'note').slice(0, 5)) store.say(f.message);
        go(hrefTo('patterns', fresh.id));
      })
      .catch((error: Error) => store.say(`It could not be made into a pattern: ${error.message}`, 'trouble'))
      .finally(() => setBusy(false));
  }

  const correct = (id: string, part: PieceCorrection): void =>
    setPieces({ ...pieces, [id]: { ...pieces[id], ...part } });
  return (
    <>
      <section className="sheet stack tight" aria-labelledby="scale-head">
        <h2 id="scale-head">Is it true to scale?</h2>
        <p>{found.summary.scale}</p>
        <p className="small">{found.summary.assembly}</p>
        {!found.proven && (
          <form
            className="row about ask"
            onSubmit={(e) => {
              e.preventDefault();
              onScale(scale.trim());
            }}
          >
            <label className="field wide">
              <span className="label">
                A length drawn in the file whose size you know, such as “100 mm square” or “4 in square”
              </span>
              <input type="text" value={scale} onChange={(e) => setScale(e.target.value)} />
            </label>
            <button type="submit" className="act">
              Measure by that
            </button>
          </form>
        )}
      </section>
      <section className="sheet row about" aria-label="What only you can know">
        <label className="field wide">
          <span className="label">Name of the pattern</span>
          <input type="text" value={name} onChange={(e) => setName(e.target.value)} />
        </label>
        <label className="field">
          <span className="label">Garment</span>
          <select value={garment} onChange={(e) => setGarment(e.target.value as GarmentKind)}>
            {GARMENTS.map((g) => (
              <option key={g}>{g}</option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">For a</span>
          <select value={wearer} onChange={(e) => setWearer(e.target.value as 'woman')}>
            <option>woman</option>
            <option>man</option>
            <option>child</option>
          </select>
        </label>
        <LengthField
          label="Allowance drawn inside the lines (none: they are stitching lines)"
          mm={included || undefined}
          show={show}
          narrow
          onAmount={setIncluded}
          onClear={() => setIncluded(0)}
        />
      </section>
      <section className="sheet stack" aria-labelledby="found-head">
        <h2 id="found-head">
          {found.pieces.length} pieces in {found.sizes.length} sizes:{' '}
          {found.sizes.map((s) => s.label).join(', ')}
        </h2>
        <ul className="cards">
          {found.pieces.map((p) => (
            <FoundCard key={p.id} piece={p} said={pieces[p.id] ?? {}} onSay={(part) => correct(p.id, part)} />
          ))}
        </ul>
      </section>
      <section className="sheet stack tight" aria-labelledby="seams-head">
        <h2 id="seams-head">Seams it took for likely</h2>
        <ul>
          {found.seams
            .filter((s) => s.rank === 1)
            .map((s) => (
              <li key={s.id}>
                <label className="tick">
                  <input
                    type="checkbox"
                    checked={!refused.includes(s.id)}
                    onChange={(e) =>
                      setRefused(e.target.checked ? refused.filter((x) => x !== s.id) : [...refused, s.id])
                    }
                  />
                  <span>
                    {s.say} <small>{s.evidence}</small>
                  </span>
                </label>
              </li>
            ))}
        </ul>
      </section>
      {found.summary.findings.map((f, i) => (
        <p key={`${f.code}/${i}`} className="row small">
          <Sign severity={f.severity} /> {f.message}
        </p>
      ))}
      <div className="row">
        <button type="button" className="act main" disabled={busy} onClick={keep}>
          {busy ? 'Making the pattern …' : 'It is right: put it in the cupboard'}
        </button>
        <a className="act" href={hrefTo('patterns')}>
          Leave it
        </a>
      </div>
      <p className="small">
        Levels, edges, seams and what repeats what can be corrected afterwards by pointing.
      </p>
    </>
  );
}

function FoundCard({
  piece,
  said,
  onSay,
}: {
  piece: FoundPiece;
  said: PieceCorrection;
  onSay: (part: PieceCorrection) => void;
}) {
  const box = boxAround(piece.paths.flatMap((size) => size.map(pathBox)));
  return (
    <li className="card plain">
      <svg
        className="piece-figure"
        viewBox={`${box.minX - 8} ${-box.maxY - 8} ${box.maxX - box.minX + 16} ${box.maxY - box.minY + 16}`}
        role="img"
        aria-label={`${piece.name}, all sizes`}
      >
        <g transform="scale(1 -1)">
          <path className="nest" d={piece.paths.flatMap((size) => size.map(pathD)).join('')} />
          <path className="own" d={piece.paths[Math.floor(piece.paths.length / 2)]!.map(pathD).join('')} />
        </g>
      </svg>
      <label className="field">
        <span className="label">Piece</span>
        <input
          type="text"
          value={said.name ?? piece.name}
          onChange={(e) => onSay({ name: e.target.value })}
        />
      </label>
      <label className="tick">
        <input
          type="checkbox"
          checked={said.leaveOut ?? false}
          onChange={(e) => onSay({ leaveOut: e.target.checked })}
        />{' '}
        leave it out
      </label>
      <label className="tick">
        <input
          type="checkbox"
          checked={said.mirror ?? false}
          onChange={(e) => onSay({ mirror: e.target.checked })}
        />{' '}
        turn it over
      </label>
      <p className="small">{piece.evidence}</p>
    </li>
  );
}
