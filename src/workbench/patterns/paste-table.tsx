import { useRef, useState } from 'react';
import { InputError, parseChartCsv, type SizeChart } from '../../garment/index.ts';
import { go, hrefTo } from '../route.ts';
import { store } from '../store/use-store.ts';
import { tablePattern } from './table-pattern.ts';

const EXAMPLE = `measure,kind,unit,S,M,L
bust-girth,body,in,34,36 1/2,39
waist-girth,body,in,26 1/2,29,31 1/2
hip-girth,body,in,36 1/2,39,41 1/2
bust,finished,in,37,39 1/2,42
waist,finished,in,29 1/2,32,34 1/2`;

/** A pattern of which one has only the table on the envelope: pasted from a spreadsheet, or typed; mistakes named by row and column. */
export function PasteTable() {
  const dialog = useRef<HTMLDialogElement>(null);
  const [text, setText] = useState('');
  const [name, setName] = useState('');
  const { chart, why } = read(text);
  return (
    <>
      <button type="button" className="act" onClick={() => dialog.current?.showModal()}>
        Type or paste a size table
      </button>
      <dialog ref={dialog} aria-labelledby="paste-title">
        <form
          method="dialog"
          className="stack"
          onSubmit={() => {
            if (!chart) return;
            const pattern = tablePattern(crypto.randomUUID(), name.trim() || 'A table', chart);
            store.create('pattern', pattern, 'Typed the size table');
            go(hrefTo('patterns', pattern.id));
          }}
        >
          <h2 id="paste-title">A pattern by its table only</h2>
          <p className="small">
            One row per measure: its name, whether it is of the body or of the finished garment, the unit,
            then one figure for each size. Tabs, commas or semicolons between. Everything can be corrected in
            place afterwards.
          </p>
          <label className="field">
            <span className="label">Name of the pattern</span>
            <input type="text" value={name} onChange={(e) => setName(e.target.value)} />
          </label>
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
          <p className="small" role="status">
            {text.trim() === ''
              ? 'Nothing pasted yet: the faint table shows the form.'
              : (why ?? `${chart!.sizes.length} sizes read.`)}
          </p>
          <div className="row">
            <button type="submit" className="act main" disabled={!chart}>
              Keep it
            </button>
            <button type="button" className="act" onClick={() => setText(EXAMPLE)}>
              Use the example
            </button>
            <button type="button" className="act quiet" onClick={() => dialog.current?.close()}>
              Leave
            </button>
          </div>
        </form>
      </dialog>
    </>
  );
}

function read(text: string): { chart: SizeChart | null; why: string | null } {
  if (text.trim() === '') return { chart: null, why: null };
  try {
    return { chart: parseChartCsv(text), why: null };
  } catch (error) {
    if (error instanceof InputError) return { chart: null, why: error.message };
    throw error;
  }
}
