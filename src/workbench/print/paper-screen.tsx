import { asTold, Stopped, tellTrouble } from '../words/fault.ts';
import { tellOf } from '../../garment/index.ts';
import { findingSentence } from '../../pipeline/index.ts';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { Finding, PaperChoices } from '../../garment/index.ts';
import { paperOf } from '../../desk/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { hrefTo } from '../station/route.ts';
import { saveFile } from '../parts/save-file.ts';
import { Sign } from '../parts/sign.tsx';
import { Waiting } from '../parts/waiting.tsx';
import { Caller } from '../call/index.ts';
import type { PagePicture, PaperDoings, PrintAsk } from './paper-worker.ts';
import { PagesLaid } from './pages-laid.tsx';
import { stillOpen } from './still-open.ts';

const PAPER_NAMES = [
  { id: 'a4', name: 'A4' },
  { id: 'letter', name: 'US Letter' },
  { id: 'a3', name: 'A3' },
  { id: 'a0', name: 'A0, one sheet' },
  { id: 'roll-36', name: 'Roll, 36 in wide' },
] as const;

/** The pages as they will lie, and the PDF that is exactly these pages. */
export default function PaperScreen({ bench }: { bench: ReadyBench }) {
  const { fitting, made, change } = bench;
  const { paper } = fitting;
  const press = useMemo(
    () =>
      new Caller<PaperDoings>(
        () => new Worker(new URL('./paper-worker.ts', import.meta.url), { type: 'module', name: 'paper' }),
      ),
    [],
  );
  const [pages, setPages] = useState<readonly PagePicture[] | null>(null);
  const [findings, setFindings] = useState<readonly Finding[]>([]);
  const [share, setShare] = useState(0);
  const [trouble, setTrouble] = useState<Error | null>(null);
  const [busy, setBusy] = useState(false);
  const asked = useRef(0);
  const ask: PrintAsk = useMemo(
    () => ({ fitting, garment: made.garment, plan: made.plan }),
    [fitting, made.garment, made.plan],
  );

  useEffect(() => {
    const n = ++asked.current;
    // A newer wish ends the drawing of an older one: pages of a paper no longer chosen help nobody.
    press.stop();
    setShare(0);
    setTrouble(null);
    press
      .call('preview', ask, (s) => n === asked.current && setShare(s))
      .then((drawn) => {
        if (n !== asked.current) return;
        setPages(drawn.pages);
        setFindings(drawn.findings);
        setShare(1);
      })
      .catch(
        (error: unknown) =>
          n === asked.current && !(error instanceof Stopped) && (setPages([]), setTrouble(asTold(error))),
      );
  }, [ask, press]);
  useEffect(() => () => press.stop(), [press]);

  const put = (part: Partial<PaperChoices>, say: string) =>
    change((f) => ({ ...f, paper: { ...f.paper, ...part } }), say);
  const open = stillOpen(made.findings);
  const chosen = paperOf(fitting);
  const own = PAPER_NAMES.some((p) => p.id === chosen) ? '' : chosen;

  function save(kind: 'pdf' | 'svg'): void {
    setBusy(true);
    const done = (): void => setBusy(false);
    const failed = (error: unknown): void => {
      if (!(error instanceof Stopped)) setTrouble(asTold(error));
    };
    if (kind === 'pdf') {
      press
        .call('pdf', ask)
        .then(({ bytes, findings: more }) => {
          saveFile(`${fitting.title}.pdf`, bytes, 'application/pdf');
          setFindings((f) => [...f, ...more]);
        })
        .catch(failed)
        .finally(done);
    } else {
      press
        .call('svg', ask)
        .then((text) => saveFile(`${fitting.title}.svg`, text, 'image/svg+xml'))
        .catch(failed)
        .finally(done);
    }
  }

  return (
    <div className="paper">
      <aside className="sheet stack paper-choices" aria-label="On paper">
        <label className="field">
          <span className="label">Paper</span>
          <select
            value={own ? 'own' : chosen}
            onChange={(e) =>
              put(
                { paper: e.target.value === 'own' ? '900x1500' : e.target.value },
                `Paper: ${e.target.selectedOptions[0]!.text}`,
              )
            }
          >
            {PAPER_NAMES.map((p) => (
              <option key={p.id} value={p.id}>
                {p.name}
              </option>
            ))}
            <option value="own">another size …</option>
          </select>
        </label>
        {own && <OwnPaper value={own} onPut={(text) => put({ paper: text }, `Paper: ${text}`)} />}
        <label className="tick">
          <input
            type="checkbox"
            checked={paper.allowances}
            onChange={(e) =>
              put(
                { allowances: e.target.checked },
                e.target.checked ? 'With allowances' : 'Stitching line only',
              )
            }
          />
          cutting line with allowances
        </label>
        <label className="tick">
          <input
            type="checkbox"
            checked={paper.nest === 'faint'}
            onChange={(e) =>
              put(
                { nest: e.target.checked ? 'faint' : 'off' },
                e.target.checked ? 'Other sizes faint' : 'Other sizes off',
              )
            }
          />
          other sizes, faint
        </label>
        <PieceChoice
          bench={bench}
          onPut={(pieces) =>
            change((f) => ({ ...f, paper: withPieces(f.paper, pieces) }), 'Chose the pieces to print')
          }
        />
        <p className="small" role="status">
          {pages === null
            ? 'Laying out the pages …'
            : `${pages.length} ${pages.length === 1 ? 'page' : 'pages'}.`}
        </p>
        {open && (
          <p className="row small top">
            <Sign severity={open.severity} /> {open.words}{' '}
            <a href={hrefTo('settle', fitting.id)}>To settle</a>
          </p>
        )}
        <button
          type="button"
          className="act main"
          disabled={busy || !pages?.length || share < 1}
          onClick={() => save('pdf')}
        >
          Save the PDF
        </button>
        <button type="button" className="act" disabled={busy || !pages?.length} onClick={() => save('svg')}>
          Save one sheet as SVG
        </button>
        {busy && <Waiting words="Writing the file" share={null} onStop={() => press.stop()} />}
        <p className="small">
          Print at 100 % (“actual size”), then measure both test squares on the first page, in both
          directions, before you cut anything.
        </p>
        {findings.map((f, i) => (
          <p key={`${f.code}/${i}`} className="row small top">
            <Sign severity={f.severity} /> {findingSentence(f, tellOf(bench.fitting.body))}
          </p>
        ))}
        {trouble && (
          <p className="said" role="alert">
            {tellTrouble(trouble, tellOf(bench.fitting.body))}
          </p>
        )}
      </aside>
      <section aria-label="Pages as they will lie" className="stack tight">
        {share < 1 && !trouble && (
          <Waiting
            words="Drawing the pages"
            share={share}
            onStop={() => {
              asked.current++;
              press.stop();
              setShare(1);
              setPages((p) => p ?? []);
            }}
          />
        )}
        {pages && <PagesLaid pages={pages} />}
      </section>
    </div>
  );
}

function withPieces(paper: PaperChoices, pieces: readonly string[] | null): PaperChoices {
  const { pieces: _old, ...rest } = paper;
  return pieces ? { ...rest, pieces } : rest;
}

function OwnPaper({ value, onPut }: { value: string; onPut: (text: string) => void }) {
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  return (
    <label className="field">
      <span className="label">Width × height in mm (or in), or roll-WIDTH</span>
      <input
        type="text"
        value={text}
        onChange={(e) => setText(e.target.value)}
        onBlur={() => text !== value && onPut(text)}
        onKeyDown={(e) => e.key === 'Enter' && onPut(text)}
      />
    </label>
  );
}

/** Which pieces; all of them when none is left out. */
function PieceChoice({
  bench,
  onPut,
}: {
  bench: ReadyBench;
  onPut: (pieces: readonly string[] | null) => void;
}) {
  const { pieces } = bench.made.garment;
  const all = [...new Set(pieces.map((p) => p.id))];
  const chosen = bench.fitting.paper.pieces ?? all;
  return (
    <details>
      <summary>
        {chosen.length === all.length ? 'All pieces' : `${chosen.length} of ${all.length} pieces`}
      </summary>
      <ul>
        {all.map((id) => {
          const piece = pieces.find((p) => p.id === id)!;
          return (
            <li key={id}>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={chosen.includes(id)}
                  onChange={(e) => {
                    const next = all.filter((x) => (x === id ? e.target.checked : chosen.includes(x)));
                    if (next.length > 0) onPut(next.length === all.length ? null : next);
                  }}
                />
                {piece.number} {piece.name}
              </label>
            </li>
          );
        })}
      </ul>
    </details>
  );
}
