import { tellIn, GARMENT_KINDS } from '../../garment/index.ts';
import { findingSentence } from '../../pipeline/index.ts';
import { useEffect, useMemo, useState } from 'react';
import type { AssemblyCorrections, Corrections, PieceCorrection, Progress } from '../../exchange/index.ts';
import type { GarmentKind } from '../../garment/index.ts';
import { Empty } from '../parts/empty.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { Sign } from '../parts/sign.tsx';
import { Waiting } from '../parts/waiting.tsx';
import { usualUnit } from '../station/usual-unit.ts';
import { go, hrefTo } from '../station/route.ts';
import { store } from '../store/use-store.ts';
import { Caller } from '../call/index.ts';
import { BringIn } from './bring-in.tsx';
import { FoundCard } from './found-card.tsx';
import { PagesTogether } from './pages-together.tsx';
import type { Found, ReadDoings } from './read-worker.ts';
import { SeamTicks } from './seam-ticks.tsx';
import { takeFile } from '../station/waiting-file.ts';

/** A drawn pattern as it was found in a file: every guess with its reason, nothing kept until it is said to be right. */
export function FromFile() {
  const [file, setFile] = useState(takeFile);
  if (file) return <Reading file={file} />;
  return (
    <div className="stack">
      <h1>From a file</h1>
      <Empty title="No file is open here">
        <p>
          A PDF, SVG or DXF with all sizes nested is looked through for pieces, sizes and seams; every guess
          is shown with its reason before anything is kept. The file stays on this machine.
        </p>
        <p className="row">
          <BringIn onOpened={() => setFile(takeFile())} />
          <a className="act" href={hrefTo('patterns')}>
            Back to the patterns
          </a>
        </p>
      </Empty>
    </div>
  );
}

function Reading({ file }: { file: File }) {
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
  const [assembly, setAssembly] = useState<AssemblyCorrections | null>(null);
  const [about, setAbout] = useState<About>(() => ({
    name: file.name.replace(/\.[^.]+$/, ''),
    garment: 'top',
    wearer: 'woman',
    included: 0,
  }));
  const [busy, setBusy] = useState(false);

  useEffect(() => {
    let wanted = true;
    let open = true;
    setBusy(true);
    setProgress(null);
    setTrouble(null);
    void file
      .arrayBuffer()
      .then((buffer) =>
        reader.call(
          'read',
          {
            bytes: new Uint8Array(buffer),
            name: file.name,
            ...(scaleBy ? { scaleBy } : {}),
            ...(assembly ? { assembly } : {}),
          },
          (p) => wanted && setProgress(p),
        ),
      )
      .then((result) => wanted && setFound(result))
      .catch((error: Error) => wanted && error.message !== 'stopped' && setTrouble(error.message))
      .finally(() => {
        open = false;
        if (wanted) setBusy(false);
      });
    return () => {
      wanted = false;
      // Still at work for an older wish: begun anew. What has been read stays with the reader otherwise.
      if (open) reader.stop();
    };
  }, [file, reader, scaleBy, assembly]);
  useEffect(() => () => reader.stop(), [reader]);

  return (
    <div className="stack">
      <h1>From “{file.name}”</h1>
      {busy && (
        <Waiting
          words={progress?.doing ?? 'Reading the file'}
          share={progress ? progress.done / Math.max(1, progress.total) : 0}
          onStop={() => {
            reader.stop();
            setBusy(false);
            setTrouble('Stopped. Nothing was kept.');
          }}
        />
      )}
      {trouble && (
        <p className="said" role="alert">
          {trouble}
        </p>
      )}
      {found?.tiles && <PagesTogether tiles={found.tiles} said={assembly ?? {}} onSay={setAssembly} />}
      {found && (
        <Looked
          key={`${scaleBy}/${JSON.stringify(assembly)}`}
          found={found}
          reader={reader}
          scaleBy={scaleBy}
          onScale={setScaleBy}
          about={about}
          onAbout={(part) => setAbout({ ...about, ...part })}
        />
      )}
    </div>
  );
}

/** What no file says; it outlives a correction of scale or pages. */
interface About {
  readonly name: string;
  readonly garment: GarmentKind;
  readonly wearer: 'woman' | 'man' | 'child';
  readonly included: number;
}

interface LookedProps {
  readonly about: About;
  readonly onAbout: (part: Partial<About>) => void;
  readonly found: Found;
  readonly reader: Caller<ReadDoings>;
  readonly scaleBy: string;
  readonly onScale: (words: string) => void;
}

/** What was found, with the few things only a person can know. */
function Looked({ found, reader, scaleBy, onScale, about, onAbout }: LookedProps) {
  const show = usualUnit(navigator.languages);
  const { name, garment, wearer, included } = about;
  const [pieces, setPieces] = useState<Readonly<Record<string, PieceCorrection>>>({});
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [taken, setTaken] = useState<readonly string[]>([]);
  const [sizes, setSizes] = useState<Readonly<Record<string, string>>>({});
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
      sizes,
      seams: { reject: refused, accept: taken },
    };
    reader
      .call('make', said)
      .then(({ pattern, findings }) => {
        const fresh = { ...pattern, id: crypto.randomUUID() };
        store.create('pattern', fresh, `Brought in from ${found.name}`);
        for (const f of findings.filter((x) => x.severity !== 'note').slice(0, 5))
          store.say(findingSentence(f, tellIn(show)));
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
          <input type="text" value={name} onChange={(e) => onAbout({ name: e.target.value })} />
        </label>
        <label className="field">
          <span className="label">Garment</span>
          <select value={garment} onChange={(e) => onAbout({ garment: e.target.value as GarmentKind })}>
            {GARMENT_KINDS.map((g) => (
              <option key={g}>{g}</option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">For a</span>
          <select value={wearer} onChange={(e) => onAbout({ wearer: e.target.value as 'woman' })}>
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
          onAmount={(mm) => onAbout({ included: mm })}
          onClear={() => onAbout({ included: 0 })}
        />
      </section>
      <section className="sheet stack" aria-labelledby="found-head">
        <h2 id="found-head">
          {found.pieces.length} {found.pieces.length === 1 ? 'piece' : 'pieces'} in {found.sizes.length}{' '}
          {found.sizes.length === 1 ? 'size' : 'sizes'}
        </h2>
        <div className="row about">
          {found.sizes.map((size) => (
            <label key={size.id} className="field" title={size.evidence}>
              <span className="label">Size</span>
              <input
                type="text"
                className="short"
                value={sizes[size.id] ?? size.label}
                onChange={(e) => setSizes({ ...sizes, [size.id]: e.target.value })}
              />
            </label>
          ))}
        </div>
        {found.sizes[0] && <p className="small">Smallest first, by girth. {found.sizes[0].evidence}</p>}
        <ul className="cards">
          {found.pieces.map((p) => (
            <FoundCard key={p.id} piece={p} said={pieces[p.id] ?? {}} onSay={(part) => correct(p.id, part)} />
          ))}
        </ul>
      </section>
      <SeamTicks
        seams={found.seams}
        refused={refused}
        taken={taken}
        onRefused={setRefused}
        onTaken={setTaken}
      />
      {found.summary.findings.map((f, i) => (
        <p key={`${f.code}/${i}`} className="row small">
          <Sign severity={f.severity} /> {findingSentence(f, tellIn(show))}
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
