import { useRef, useState } from 'react';
import {
  InputError,
  readPlainRows,
  tellError,
  tellIn,
  type Pattern,
  type SizeChart,
} from '../../garment/index.ts';
import { usualUnit } from '../station/usual-unit.ts';
import { go, hrefTo } from '../station/route.ts';
import { store } from '../store/use-store.ts';
import { putTable, tablePattern, tableSizes } from '../../desk/index.ts';

const EXAMPLE = `Size, S, M, L
Bust, 34, 36 1/2, 39
Waist, 26 1/2, 29, 31 1/2
Hip, 36 1/2, 39, 41 1/2
Finished bust, 37, 39 1/2, 42
Finished waist, 29 1/2, 32, 34 1/2`;

/** A table pasted from a spreadsheet, or typed; rows that are not understood are named. A pattern of which one has no more is made of it, or `onto` takes its rows over. */
export function PasteTable({ onto }: { onto?: Pattern }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [text, setText] = useState('');
  const [name, setName] = useState('');
  const [unit, setUnit] = useState(() => usualUnit(navigator.languages));
  const { chart, why } = read(text, unit);
  const sizes = onto && chart ? tableSizes(onto, chart) : null;
  const ready = chart !== null && (!onto || sizes !== null);
  const keep = (): void => {
    if (!chart || !ready) return;
    dialog.current?.close();
    if (onto && sizes) {
      store.change('pattern', onto.id, (p) => putTable(p, chart, sizes), 'Took over a pasted table');
      return setText('');
    }
    const pattern = tablePattern(crypto.randomUUID(), name.trim() || 'A table', chart);
    store.create('pattern', pattern, 'Typed the size table');
    go(hrefTo('patterns', pattern.id));
  };
  return (
    <>
      <button type="button" className="act" onClick={() => dialog.current?.showModal()}>
        {onto ? 'Paste a table' : 'Type or paste a size table'}
      </button>
      <dialog ref={dialog} aria-labelledby="paste-title">
        <form
          className="stack"
          onSubmit={(event) => {
            event.preventDefault();
            keep();
          }}
        >
          <h2 id="paste-title">{onto ? `A table for “${onto.name}”` : 'A pattern by its table only'}</h2>
          <p className="small">
            The sizes in the first line, then a line for each measure, as on the envelope; begin the line with
            “Finished” where it is of the garment. Paste it from a spreadsheet, or type commas or spaces
            between.{' '}
            {onto
              ? 'Rows that it does not have stay as they are.'
              : 'Everything can be corrected in place afterwards.'}
          </p>
          <div className="row about">
            {!onto && (
              <label className="field wide">
                <span className="label">Name of the pattern</span>
                <input type="text" value={name} onChange={(e) => setName(e.target.value)} />
              </label>
            )}
            <label className="field">
              <span className="label">Figures in</span>
              <select value={unit} onChange={(e) => setUnit(e.target.value as 'in')}>
                <option value="in">inches</option>
                <option value="cm">centimetres</option>
              </select>
            </label>
          </div>
          <label className="field">
            <span className="label">Table</span>
            <textarea
              rows={8}
              value={text}
              placeholder={EXAMPLE}
              spellCheck={false}
              onChange={(e) => setText(e.target.value)}
            />
          </label>
          <div className="small" role="status">
            {text.trim() === '' && <p>Nothing pasted yet: the faint table shows the form.</p>}
            {chart && <p>{whatWasRead(chart)}</p>}
            {why && (
              <p className="said">
                {chart ? 'Left out, because it was not understood: ' : ''}
                {why}
              </p>
            )}
            {onto && chart && !sizes && (
              <p>
                The table has {chart.sizes.length} sizes and the pattern {onto.chart.sizes.length}, under
                other names. Name the sizes alike, then paste it again.
              </p>
            )}
          </div>
          <div className="row">
            <button type="submit" className="act main" disabled={!ready}>
              {onto ? 'Take it over' : 'Keep it'}
            </button>
            {!onto && (
              <button type="button" className="act" onClick={() => (setText(EXAMPLE), setUnit('in'))}>
                Use the example
              </button>
            )}
            <button type="button" className="act quiet" onClick={() => dialog.current?.close()}>
              Leave
            </button>
          </div>
        </form>
      </dialog>
    </>
  );
}

function whatWasRead({ sizes, body, finished, finishedLengths }: SizeChart): string {
  const rows = [body, finished, finishedLengths].reduce((sum, kind) => sum + Object.keys(kind).length, 0);
  return `${sizes.length === 1 ? '1 size' : `${sizes.length} sizes`} and ${rows === 1 ? '1 row' : `${rows} rows`} read.`;
}

/** What can be read of it, and what is wrong with the rest, each row on its own line. */
function read(text: string, unit: 'in' | 'cm'): { chart: SizeChart | null; why: string | null } {
  if (text.trim() === '') return { chart: null, why: null };
  try {
    const { chart, wrong } = readPlainRows(text, unit);
    return { chart, why: wrong && tellError(wrong, tellIn(unit)) };
  } catch (error) {
    if (error instanceof InputError) return { chart: null, why: tellError(error, tellIn(unit)) };
    throw error;
  }
}
