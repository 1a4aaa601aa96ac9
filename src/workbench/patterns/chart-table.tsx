import { useState } from 'react';
import {
  LEVELS,
  MEASURES,
  readLength,
  levelName,
  measureName,
  renderPhrase,
  tellIn,
  type MeasureId,
  type Pattern,
} from '../../garment/index.ts';
import { amountText } from '../parts/amount.tsx';
import type { ChangePattern } from './change-pattern.ts';
import { addRow, addSize, dropRow, pastedFigures, putCell, putCells, renameSize } from '../../desk/index.ts';

type RowKind = 'body' | 'finished' | 'finishedLengths';
const HEADS: Record<RowKind, string> = {
  body: 'Body, for whom each size is meant',
  finished: 'Finished garment, all round',
  finishedLengths: 'Finished lengths',
};

const rowName = (kind: RowKind, name: string, { wearer }: Pattern): string =>
  kind === 'finished' ? levelName(name, wearer) : measureName(name as MeasureId, wearer);

/** The maker's table, corrected in place: every figure a field, arrow keys from one to the next. */
export function ChartTable({
  pattern,
  show,
  change,
}: {
  pattern: Pattern;
  show: 'in' | 'cm';
  change: ChangePattern;
}) {
  const { chart } = pattern;
  const kinds = (['body', 'finished', 'finishedLengths'] as const).filter(
    (k) => k !== 'finishedLengths' || Object.keys(chart[k]).length > 0,
  );
  return (
    <div className="wide-table" role="region" aria-label="Figures of the size table" tabIndex={0}>
      <table className="chart" onKeyDown={walkCells}>
        <thead>
          <tr>
            <th scope="col">Size</th>
            {chart.sizes.map((size, i) => (
              <th key={size.id} scope="col">
                <input
                  aria-label={`Name of size ${i + 1}`}
                  value={size.label}
                  onChange={(e) =>
                    change((p) => renameSize(p, i, e.target.value), `Renamed size ${i + 1}`, `size/${i}`)
                  }
                />
              </th>
            ))}
            {pattern.pieces.length === 0 && (
              <td>
                <button
                  type="button"
                  className="act quiet"
                  onClick={() => {
                    const label = String(chart.sizes.length + 1);
                    change((p) => addSize(p, { id: crypto.randomUUID().slice(0, 8), label }), 'Added a size');
                  }}
                >
                  + size
                </button>
              </td>
            )}
          </tr>
        </thead>
        {kinds.map((kind) => (
          <tbody key={kind}>
            <tr>
              <th scope="rowgroup" colSpan={chart.sizes.length + 1} className="group">
                {HEADS[kind]}
              </th>
            </tr>
            {Object.entries(chart[kind] as Record<string, readonly (number | null)[]>).map(([name, row]) => (
              <tr key={name}>
                <th scope="row">{rowName(kind, name, pattern)}</th>
                {chart.sizes.map((size, i) => (
                  <td key={size.id}>
                    <Cell
                      label={`${rowName(kind, name, pattern)}, size ${size.label}`}
                      mm={row[i] ?? null}
                      show={show}
                      onPaste={(figures) =>
                        change(
                          (p) => putCells(p, kind, name, i, figures),
                          `${rowName(kind, name, pattern)}: pasted figures`,
                        )
                      }
                      onPut={(mm) =>
                        change(
                          (p) => putCell(p, kind, name, i, mm),
                          `${rowName(kind, name, pattern)}, size ${size.label}`,
                        )
                      }
                    />
                  </td>
                ))}
                <td>
                  <button
                    type="button"
                    className="act quiet"
                    aria-label={`Take away the row ${rowName(kind, name, pattern)}`}
                    onClick={() =>
                      change(
                        (p) => dropRow(p, kind, name),
                        `Took away the row ${rowName(kind, name, pattern)}`,
                      )
                    }
                  >
                    ×
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
      <AddRow pattern={pattern} change={change} />
    </div>
  );
}

function Cell({
  label,
  mm,
  show,
  onPut,
  onPaste,
}: {
  label: string;
  mm: number | null;
  show: 'in' | 'cm';
  onPut: (mm: number | null) => void;
  /** Several figures were pasted: for this size and those after it. */
  onPaste: (figures: readonly (number | null)[]) => void;
}) {
  const shown = mm === null ? '' : amountText(mm, show, { in: 16 }).replace(/ (in|cm)$/, '');
  const [text, setText] = useState<string | null>(null);
  const value = text ?? shown;
  const read = value.trim() === '' ? null : readLength(value, show);
  const wrong = text !== null && read !== null && read.kind !== 'length';
  return (
    <input
      aria-label={label}
      aria-invalid={wrong || undefined}
      title={wrong && 'message' in read ? renderPhrase(read.message, tellIn(show)) : undefined}
      value={value}
      inputMode={show === 'cm' ? 'decimal' : 'text'}
      onChange={(e) => setText(e.target.value)}
      onPaste={(e) => {
        const figures = pastedFigures(e.clipboardData.getData('text'), show);
        if (!figures) return;
        e.preventDefault();
        setText(null);
        onPaste(figures);
      }}
      onBlur={() => {
        if (text !== null && text !== shown) {
          if (text.trim() === '') onPut(null);
          else if (read?.kind === 'length') onPut(read.mm);
          else return;
        }
        setText(null);
      }}
    />
  );
}

/** Up, down and Enter go to the cell above or below, as on squared paper. */
function walkCells(event: React.KeyboardEvent<HTMLTableElement>): void {
  const step = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' || event.key === 'Enter' ? 1 : 0;
  const cell = (event.target as HTMLElement).closest('td, th');
  if (!step || !(cell instanceof HTMLTableCellElement)) return;
  const rows = [...event.currentTarget.rows];
  for (let r = rows.indexOf(cell.parentElement as HTMLTableRowElement) + step; rows[r]; r += step) {
    const input = rows[r]!.cells[cell.cellIndex]?.querySelector('input');
    if (!input) continue;
    event.preventDefault();
    input.focus();
    input.select();
    return;
  }
}

const BODY_ROWS: readonly MeasureId[] = [
  'upper-bust-girth',
  'bust-girth',
  'under-bust-girth',
  'waist-girth',
  'high-hip-girth',
  'hip-girth',
  'upper-arm-girth',
  'back-waist-length',
  'front-waist-length',
  'shoulder-length',
  'stature',
];

function AddRow({ pattern, change }: { pattern: Pattern; change: ChangePattern }) {
  const body = BODY_ROWS.filter((id) => !(id in pattern.chart.body));
  const finished = LEVELS.filter((l) => l.girth && !(l.level in pattern.chart.finished));
  const lengths = BODY_ROWS.filter(
    (id) => MEASURES[id].kind === 'length' && !(id in pattern.chart.finishedLengths),
  );
  return (
    <label className="row small addrow">
      Add a row
      <select
        value=""
        onChange={(e) => {
          const [kind, name] = e.target.value.split('/') as [RowKind, string];
          change((p) => addRow(p, kind, name), `Added the row ${rowName(kind, name, pattern)}`);
        }}
      >
        <option value="">choose …</option>
        <optgroup label="Body">
          {body.map((id) => (
            <option key={id} value={`body/${id}`}>
              {measureName(id, pattern.wearer)}
            </option>
          ))}
        </optgroup>
        <optgroup label="Finished, all round">
          {finished.map((l) => (
            <option key={l.level} value={`finished/${l.level}`}>
              {levelName(l.level, pattern.wearer)}
            </option>
          ))}
        </optgroup>
        <optgroup label="Finished lengths">
          {lengths.map((id) => (
            <option key={id} value={`finishedLengths/${id}`}>
              {measureName(id, pattern.wearer)}
            </option>
          ))}
        </optgroup>
      </select>
    </label>
  );
}
