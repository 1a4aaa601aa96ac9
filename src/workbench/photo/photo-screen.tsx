import { Stopped, tellTrouble } from '../words/fault.ts';
import { tellIn } from '../../garment/index.ts';
import { useEffect, useMemo, useState } from 'react';
import { Empty } from '../parts/empty.tsx';
import { Waiting } from '../parts/waiting.tsx';
import { usualUnit } from '../station/usual-unit.ts';
import { hrefTo } from '../station/route.ts';
import { Caller } from '../call/index.ts';
import { Flatten } from './flatten.tsx';
import type { FlatPhoto, OpenedPhoto, PhotoDoings } from './photo-worker.ts';
import { TraceTable } from './trace-table.tsx';

/** A photograph or scan of a piece: laid flat by a sheet of known size, its lines traced, size by size, into a pattern. */
export default function PhotoScreen() {
  const show = usualUnit(navigator.languages);
  const worker = useMemo(
    () =>
      new Caller<PhotoDoings>(
        () => new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module', name: 'photo' }),
      ),
    [],
  );
  const [opened, setOpened] = useState<{ photo: OpenedPhoto; url: string; name: string } | null>(null);
  const [flat, setFlat] = useState<FlatPhoto | null>(null);
  const [busy, setBusy] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => () => worker.stop(), [worker]);
  const url = opened?.url;
  useEffect(() => () => (url ? URL.revokeObjectURL(url) : undefined), [url]);

  function attempt<T>(words: string, act: Promise<T>, done: (value: T) => void): void {
    setBusy(words);
    setTrouble(null);
    act
      .then(done)
      .catch((error: unknown) =>
        setTrouble(error instanceof Stopped ? 'Stopped.' : tellTrouble(error, tellIn(show))),
      )
      .finally(() => setBusy(''));
  }
  const choose = (file: File): void => {
    setFlat(null);
    attempt('Looking for the sheet', worker.call('open', { file }), (photo) =>
      setOpened({
        photo,
        url: URL.createObjectURL(file),
        name: file.name.replace(/\.[^.]+$/, ''),
      }),
    );
  };
  return (
    <div className="stack">
      <div className="row spread">
        <h1>From a photograph or scan</h1>
        <div className="row">
          <label className="act main filepick">
            {opened ? 'Another picture' : 'Choose a picture'}
            <input
              type="file"
              className="unseen"
              accept="image/*"
              onChange={(event) => {
                const file = event.target.files?.[0];
                event.target.value = '';
                if (file) choose(file);
              }}
            />
          </label>
          <a className="act" href={hrefTo('patterns')}>
            Back to the patterns
          </a>
        </div>
      </div>
      {busy && (
        <Waiting
          words={busy}
          share={null}
          onStop={() => {
            worker.stop();
            setOpened(null);
            setFlat(null);
          }}
        />
      )}
      {trouble && (
        <p className="said" role="alert">
          {trouble}
        </p>
      )}
      {!opened && !busy && (
        <Empty title="Lay the piece flat, put a sheet of paper beside it" picture={<HowToLie />}>
          <p>
            Lay the tissue on a dark floor or table, a white A4 or Letter sheet beside it in the same plane,
            and photograph both from as straight above as you can reach. The picture stays on this machine.
          </p>
        </Empty>
      )}
      {opened && (
        // Stays while the picture is traced: whoever comes back to the corners finds them, and the sheet, as they were said.
        <div hidden={flat !== null}>
          <Flatten
            key={opened.url}
            photo={opened.photo}
            url={opened.url}
            show={show}
            onFlatten={(given) => attempt('Laying the photo flat', worker.call('flatten', given), setFlat)}
            onScan={(dpi) => attempt('Reading the scan', worker.call('scan', { dpi }), setFlat)}
          />
        </div>
      )}
      {opened && flat && (
        <TraceTable name={opened.name} flat={flat} worker={worker} show={show} onBack={() => setFlat(null)} />
      )}
    </div>
  );
}

/** The table from above: a piece in three sizes, a white sheet beside it, both within the frame. */
function HowToLie() {
  return (
    <svg viewBox="0 0 140 110" className="spool">
      <path d="M4 4H136V106H4Z" fill="var(--chalk)" stroke="none" />
      <path d="M14 22H52V76H14Z" fill="var(--tissue)" stroke="var(--ink)" strokeWidth="1" />
      <path d="M62 12H128V98H62Z" fill="var(--tissue-deep)" stroke="none" />
      {[0, 4, 8].map((out) => (
        <path
          key={out}
          d={`M70 20H${104 + out}Q${108 + out} 52 ${112 + out} ${84 + out * 0.7}H70Z`}
          fill="none"
          stroke={out === 0 ? 'var(--thread)' : 'var(--ink-soft)'}
          strokeWidth={out === 0 ? 2 : 0.8}
        />
      ))}
    </svg>
  );
}
