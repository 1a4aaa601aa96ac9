import { useRef, useState } from 'react';
import { InputError, readPlainTable, tellError, tellIn, type SizeChart } from '../../garment/index.ts';
import { usualUnit } from '../station/usual-unit.ts';
import { go, hrefTo } from '../station/route.ts';
import { store } from '../store/use-store.ts';
import { tablePattern } from '../../desk/index.ts';

const EXAMPLE = `Size, S, M, L
Bust, 34, 36 1/2, 39
Waist, 26 1/2, 29, 31 1/2
Hip, 36 1/2, 39, 41 1/2
Finished bust, 37, 39 1/2, 42
Finished waist, 29 1/2, 32, 34 1/2`;

/** A pattern of which one has only the table on the envelope: pasted from a spreadsheet, or typed; mistakes named by row and column. */
export function PasteTable() {
  const dialog = useRef<HTMLDialogElement>(null);
  const [text, setText] = useState('');
  const [name, setName] = useState('');
  const [unit, setUnit] = useState(() => usualUnit(navigator.languages));
  const { chart, why } = read(text, unit);
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
            The sizes in the first line, then a line for each measure, as on the envelope; begin the line with
            “Finished” where it is of the garment. Paste it from a spreadsheet, or type commas between.
            Everything can be corrected in place afterwards.
          </p>
          <div className="row about">
            <label className="field wide">
              <span className="label">Name of the pattern</span>
              <input type="text" value={name} onChange={(e) => setName(e.target.value)} />
            </label>
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
          <p className="small" role="status">
            {text.trim() === ''
              ? 'Nothing pasted yet: the faint table shows the form.'
              : (why ?? `${chart!.sizes.length} sizes read.`)}
          </p>
          <div className="row">
            <button type="submit" className="act main" disabled={!chart}>
              Keep it
            </button>
            <button type="button" className="act" onClick={() => (setText(EXAMPLE), setUnit('in'))}>
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

function read(text: string, unit: 'in' | 'cm'): { chart: SizeChart | null; why: string | null } {
  if (text.trim() === '') return { chart: null, why: null };
  try {
    return { chart: readPlainTable(text, unit), why: null };
  } catch (error) {
    if (error instanceof InputError) return { chart: null, why: tellError(error, tellIn(unit)) };
    throw error;
  }
}
