import { Stopped, tellTrouble } from '../words/fault.ts';
import { useEffect, useMemo, useState } from 'react';
import type { AssemblyCorrections, Progress } from '../../exchange/index.ts';
import { renderPhrase } from '../../garment/index.ts';
import { Empty } from '../parts/empty.tsx';
import { Waiting } from '../parts/waiting.tsx';
import { pageTell } from '../station/page-tell.ts';
import { hrefTo } from '../station/route.ts';
import { Caller } from '../call/index.ts';
import { BringIn } from './bring-in.tsx';
import { FoundSheet, type About } from './found-sheet.tsx';
import { PagesTogether } from './pages-together.tsx';
import type { Found, ReadDoings } from './read-worker.ts';
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
  const [about, setAbout] = useState<About>(() => ({ name: file.name.replace(/\.[^.]+$/, ''), answers: {} }));
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
      .catch(
        (error: unknown) =>
          wanted && !(error instanceof Stopped) && setTrouble(tellTrouble(error, pageTell())),
      )
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
          words={progress ? renderPhrase(progress.doing, pageTell()) : 'Reading the file'}
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
        <FoundSheet
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
