import { tellTrouble } from '../words/fault.ts';
import { pageTell } from '../station/page-tell.ts';
import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import { PiecesRow } from '../drawing/pieces-row.tsx';
import { Empty } from '../parts/empty.tsx';
import { go, hrefTo } from '../station/route.ts';
import { sayHere } from '../station/say-here.ts';
import { useList, useStoreState } from '../store/use-store.ts';
import { NewFitting } from '../begin/new-fitting.tsx';
import { EXAMPLE_FITTINGS } from '../begin/example-ids.ts';
import { layOutWardrobe } from '../begin/wardrobe.ts';

const Unread = lazy(() => import('./unread.tsx'));

/** The first page: what one is working on, and the three ways to begin. */
export function StartScreen({ worked = false }: { worked?: boolean }) {
  const fittings = useList('fitting');
  const people = useList('person');
  const { unread } = useStoreState();
  return (
    <div className="stack start">
      <div className="stack tight lead">
        <h1>Pin it true.</h1>
        <p>
          One body, one pattern, brought together: which size at which level, what to take in or let out at
          every seam, and paper to cut from. All of it on your own machine.
        </p>
      </div>
      {unread.length > 0 && (
        <Suspense fallback={null}>
          <Unread />
        </Suspense>
      )}
      <Begin empty={fittings.length === 0 && people.length === 0} worked={worked} />
      <section className="stack" aria-labelledby="fittings-head">
        <h2 id="fittings-head">Fittings under way</h2>
        {fittings.length === 0 ? (
          <Empty title="No fitting yet">
            <p>
              A fitting is one garment for one person. Add a person under People, look at the patterns under
              Patterns, then bring the two together here. Or open the worked example and look at one that is
              finished.
            </p>
          </Empty>
        ) : (
          <ul className="cards">
            {fittings.map(({ id, doc, say, changed }) => (
              <li key={id} className="sheet card">
                <a href={hrefTo('fit', id)}>{doc.title}</a>
                {doc.pattern.pieces.length > 0 && <PiecesRow pattern={doc.pattern} />}
                <p>
                  {doc.body.name} · {doc.pattern.name}
                </p>
                <p className="small">
                  {EXAMPLE_FITTINGS.includes(id) && 'Example · '}
                  {say} ·{' '}
                  {new Date(changed).toLocaleDateString(undefined, { day: 'numeric', month: 'short' })}
                </p>
              </li>
            ))}
          </ul>
        )}
      </section>
      <NewFitting />
    </div>
  );
}

function layOut(setBusy: (busy: boolean) => void): void {
  setBusy(true);
  layOutWardrobe()
    .then((id) => go(hrefTo('fit', id)))
    .catch((error: unknown) =>
      sayHere(`The worked example could not be laid out. ${tellTrouble(error, pageTell())}`, 'trouble'),
    )
    .finally(() => setBusy(false));
}

function Begin({ empty, worked }: { empty: boolean; worked: boolean }) {
  const [busy, setBusy] = useState(false);
  // Once: one that could not be laid out is not tried without end.
  const begun = useRef(false);
  useEffect(() => {
    if (!worked || !empty || begun.current) return;
    begun.current = true;
    layOut(setBusy);
  }, [worked, empty]);
  return (
    <section className="row" aria-label="Ways to begin">
      <a className={`act ${empty ? 'main' : ''}`} href={hrefTo('people')}>
        {empty ? 'Begin with a person' : 'People'}
      </a>
      <button type="button" className="act" disabled={busy} onClick={() => layOut(setBusy)}>
        {busy ? 'Laying it out …' : 'Open the worked example'}
      </button>
      <label className="act filepick">
        Open a file …
        <input
          type="file"
          className="unseen"
          accept=".json,.csv,.pdf,.svg,.dxf,application/json"
          onChange={(event) => {
            const file = event.target.files?.[0];
            event.target.value = '';
            if (file) void opened(file).then((href) => href && go(href));
          }}
        />
      </label>
    </section>
  );
}

/** Takes a file in. What reads files is fetched with the first one: the plan needs none of it. */
const opened = async (file: File): Promise<string | null> =>
  (await import('../files/open-file.ts')).openFile(file);
