import { FAINT_CONTRAST } from '../../exchange/index.ts';
import { pathLength } from '../../geometry/index.ts';
import { amountText } from '../parts/amount.tsx';
import { AccuracyWords } from './accuracy-words.tsx';
import { LINE_MEANINGS, lineName } from './inside-line.ts';
import type { FlatPhoto } from './photo-worker.ts';
import { canClose, finished, isWhole, type Tracing, type TracingAct } from './tracing.ts';

interface Props {
  readonly tracing: Tracing;
  readonly act: (act: TracingAct) => void;
  readonly flat: FlatPhoto;
  readonly show: 'in' | 'cm';
  readonly onNextSize: (inwards: boolean) => void;
  readonly onFinish: () => void;
  readonly onBack: () => void;
}

/** What to do next, in words; how far one is. */
function statusWords({ said, size, line }: Tracing, show: 'in' | 'cm'): string {
  if (line && line.means === 'notch')
    return line.from ? 'Click a little farther in.' : 'Click where the notch stands on the outline.';
  if (line)
    return line.from
      ? 'Click where it ends.'
      : `Click where the ${lineName(line.means)} begins, at the outline.`;
  if (said) return said;
  const many = size.clicks.length;
  if (many === 0)
    return 'Click the corners of the smallest size (or the largest), one after another round the piece.';
  if (!size.closed)
    return `${many} ${many === 1 ? 'corner' : 'corners'}; click the first one again to close.`;
  const round = size.runs.reduce((sum, r) => sum + pathLength(r.path), 0);
  return `${many} runs, ${amountText(round, show)} round.`;
}

/** Beside the table: what the next run is, the runs with their lengths, sizes and pieces. */
export function TracePanel(props: Props) {
  const { tracing, act, flat, show, onFinish, onBack } = props;
  const { size, straight } = tracing;
  const faint = size.runs.filter((r) => r.contrast < FAINT_CONTRAST).length;
  return (
    <aside className="sheet stack pieces-panel" aria-label="Tracing">
      <AccuracyWords flat={flat} />
      <div className="choice" role="group" aria-label="The next run is">
        {[true, false].map((is) => (
          <button
            key={String(is)}
            type="button"
            className="act"
            aria-pressed={straight === is}
            onClick={() => act({ act: 'straight', straight: is })}
          >
            {is ? 'Straight' : 'Curved'}
          </button>
        ))}
      </div>
      <p role="status">
        {statusWords(tracing, show)}
        {faint > 0 ? ` Along ${faint} of them no dark line was found.` : ''}
      </p>
      <div className="row">
        {!size.closed && (
          <>
            <button
              type="button"
              className="act"
              disabled={size.clicks.length === 0}
              onClick={() => act({ act: 'take-back' })}
            >
              Take the last back
            </button>
            <button
              type="button"
              className="act"
              disabled={!canClose(tracing)}
              onClick={() => act({ act: 'close' })}
            >
              Close the outline
            </button>
          </>
        )}
        {size.closed && (
          <button type="button" className="act" onClick={() => act({ act: 'open' })}>
            Open it again
          </button>
        )}
      </div>
      {size.runs.length > 0 && <Runs tracing={tracing} act={act} show={show} />}
      {size.closed && <LinesInside tracing={tracing} act={act} />}
      {size.closed && <SizeAndPiece {...props} />}
      <div className="row">
        <button type="button" className="act main" disabled={finished(tracing) === null} onClick={onFinish}>
          Make it a pattern
        </button>
        <button type="button" className="act" onClick={onBack}>
          Back to the corners
        </button>
      </div>
    </aside>
  );
}

/** The runs with their lengths; on a first size, which of them lies on the fold. */
function Runs({ tracing: { size, done, fold }, act, show }: Pick<Props, 'tracing' | 'act' | 'show'>) {
  return (
    <ol className="stack tight runs">
      {size.runs.map((r, i) => (
        <li key={i} className="row">
          <span>{amountText(pathLength(r.path), show, { in: 16 })}</span>
          {size.closed && done.length === 0 && (
            <label className="tick">
              <input
                type="checkbox"
                checked={fold === i}
                onChange={(e) => act({ act: 'fold', run: e.target.checked ? i : null })}
              />{' '}
              on the fold
            </label>
          )}
        </li>
      ))}
    </ol>
  );
}

/** The lines inside the piece, each with what it is, and the way to one more. */
function LinesInside({ tracing: { size, line }, act }: Pick<Props, 'tracing' | 'act'>) {
  return (
    <div className="stack tight">
      <label className="field">
        <span className="label">A line inside the piece</span>
        <select
          value={line?.means ?? ''}
          onChange={(e) => act({ act: 'line', means: e.target.value || null })}
        >
          <option value="">choose what it is …</option>
          {LINE_MEANINGS.map((means) => (
            <option key={means} value={means}>
              {lineName(means)}
            </option>
          ))}
        </select>
      </label>
      <p className="small">
        Girths are measured along these lines: without a hip line nothing can be altered at the hip. A next
        size takes them along; drag their ends where it has its own.
      </p>
      {size.lines.length > 0 && (
        <ul className="stack tight runs">
          {size.lines.map(({ means }, i) => (
            <li key={i} className="row">
              <span>{lineName(means)}</span>
              <button type="button" className="act" onClick={() => act({ act: 'drop-line', line: i })}>
                Remove<span className="unseen"> the {lineName(means)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** Names of the size and the piece, and the ways on. */
function SizeAndPiece({ tracing, act, onNextSize }: Props) {
  const ready = isWhole(tracing);
  return (
    <>
      <div className="row about">
        <label className="field">
          <span className="label">This size is called</span>
          <input
            type="text"
            value={tracing.names[tracing.done.length] ?? ''}
            onChange={(e) => act({ act: 'call-size', name: e.target.value })}
          />
        </label>
        {[false, true]
          .filter((inwards) => tracing.inwards !== !inwards)
          .map((inwards) => (
            <button
              key={String(inwards)}
              type="button"
              className="act"
              disabled={!ready}
              onClick={() => onNextSize(inwards)}
            >
              {inwards ? 'Next size inwards' : 'Next size outwards'}
            </button>
          ))}
      </div>
      <div className="row about">
        <label className="field">
          <span className="label">Piece</span>
          <input
            type="text"
            value={tracing.pieceName}
            onChange={(e) => act({ act: 'call-piece', name: e.target.value })}
          />
        </label>
        <label className="field">
          <span className="label">Cut</span>
          <input
            type="number"
            min={1}
            max={20}
            value={tracing.count}
            onChange={(e) => act({ act: 'count', count: Number(e.target.value) })}
          />
        </label>
        <button type="button" className="act" disabled={!ready} onClick={() => act({ act: 'next-piece' })}>
          Another piece
        </button>
      </div>
    </>
  );
}
