import { useEffect, useMemo, useRef, useState } from 'react';
import { FAINT_CONTRAST, mirrorAbout, type Click } from '../../exchange/index.ts';
import { distance, pathLength, type Point } from '../../geometry/index.ts';
import { pathD } from '../drawing/path-d.ts';
import { amountText } from '../parts/amount.tsx';
import { leaveFile } from '../station/waiting-file.ts';
import { TableView } from '../table/table-view.tsx';
import { go, hrefTo } from '../station/route.ts';
import { Latest, type Caller } from '../call/index.ts';
import { AccuracyWords } from './accuracy-words.tsx';
import { Handle } from './handle.tsx';
import type { FlatPhoto, PhotoDoings } from './photo-worker.ts';
import { tracedDrawing, tracedFile, type TracedPiece, type TracedSize } from './traced-piece.ts';

interface Props {
  readonly name: string;
  readonly flat: FlatPhoto;
  readonly worker: Caller<PhotoDoings>;
  readonly show: 'in' | 'cm';
  readonly onBack: () => void;
}

const FRESH: TracedSize = { clicks: [], runs: [], closed: false };
/** A click so near the first corner closes the outline, mm. */
const CLOSE_MM = 6;

/** The flat picture on the table: corners are clicked, the lines between them snap to the darkest line; size after size, piece after piece. */
export function TraceTable({ name, flat, worker, show, onBack }: Props) {
  const url = useMemo(() => URL.createObjectURL(flat.picture), [flat]);
  useEffect(() => () => URL.revokeObjectURL(url), [url]);
  const [size, setSize] = useState<TracedSize>(FRESH);
  const [done, setDone] = useState<readonly TracedSize[]>([]);
  const [pieces, setPieces] = useState<readonly TracedPiece[]>([]);
  const [names, setNames] = useState<readonly string[]>(['1']);
  // Sizes are traced from the smallest outwards or from the largest inwards, the same way for every piece.
  const [inwards, setInwards] = useState<boolean | null>(null);
  const [straight, setStraight] = useState(true);
  const [fold, setFold] = useState<number | null>(null);
  const [pieceName, setPieceName] = useState('Piece 1');
  const [count, setCount] = useState(2);
  const [said, setSaid] = useState('');
  const [cross, setCross] = useState<Point>({
    x: (flat.box.minX + flat.box.maxX) / 2,
    y: (flat.box.minY + flat.box.maxY) / 2,
  });
  const latest = useRef<Latest<{ clicks: readonly Click[]; closed: boolean }, TracedSize['runs']> | null>(
    null,
  );
  latest.current ??= new Latest((ask) => worker.call('trace', ask));

  function put(clicks: readonly Click[], closed = size.closed): void {
    setSize((s) => ({ ...s, clicks, closed }));
    latest.current!.ask(
      { clicks, closed },
      (runs) => setSize((s) => ({ ...s, runs })),
      (error) => setSaid(error.message),
    );
  }
  function click(at: Point): void {
    if (size.closed) return;
    setSaid('');
    const first = size.clicks[0];
    if (first && size.clicks.length >= 3 && distance(first.at, at) < CLOSE_MM) close();
    else put([...size.clicks, { at, straight }]);
  }
  function close(): void {
    put(size.clicks.with(0, { ...size.clicks[0]!, straight }), true);
  }
  const ready = size.closed && size.runs.length === size.clicks.length;
  function nextSize(inside: boolean): void {
    const kept = size;
    const side = inside ? 'inside' : 'outside';
    worker.call('next', { runs: kept.runs.map((r) => r.path), clicks: kept.clicks, inwards: inside }).then(
      ({ clicks, lost }) => {
        setInwards(inside);
        setDone([...done, kept]);
        setNames((n) => (n.length > done.length + 1 ? n : [...n, String(done.length + 2)]));
        put(clicks, true);
        setSaid(
          lost === 0
            ? `The next line ${side} was found along every run. Drag a corner that is off.`
            : `Along ${lost} of ${clicks.length} runs no further line was found: drag those corners.`,
        );
      },
      (error: Error) => setSaid(error.message),
    );
  }
  const thisPiece = (): TracedPiece => ({ name: pieceName, count, fold, sizes: [...done, size] });
  function nextPiece(): void {
    setPieces([...pieces, thisPiece()]);
    setDone([]);
    setSize(FRESH);
    setFold(null);
    setPieceName(`Piece ${pieces.length + 2}`);
    setSaid('Click round the next piece.');
  }
  function finish(): void {
    const all = ready ? [...pieces, thisPiece()] : pieces;
    const many = Math.min(...all.map((p) => p.sizes.length));
    const even = all.map((p) => ({ ...p, sizes: p.sizes.slice(0, many) }));
    const called = names.slice(0, many);
    // A pattern's sizes go from the smallest up.
    const rising = inwards ? even.map((p) => ({ ...p, sizes: p.sizes.toReversed() })) : even;
    leaveFile(tracedFile(tracedDrawing(name, rising, inwards ? called.toReversed() : called)));
    go(hrefTo('patterns', 'from-a-file'));
  }
  const faint = size.runs.filter((r) => r.contrast < FAINT_CONTRAST).length;
  const box = { minX: flat.box.minX, maxX: flat.box.maxX, minY: flat.box.minY, maxY: flat.box.maxY };
  const foldRun = fold === null ? undefined : size.runs[fold]?.path;
  return (
    <div className="pieces-body">
      <TableView
        label="The picture laid flat"
        box={box}
        nest={null}
        className="trace"
        onPoint={(at, target) => {
          if (!target.closest('[data-handle]')) click(at);
        }}
      >
        <image
          href={url}
          x={box.minX}
          y={-box.maxY}
          width={box.maxX - box.minX}
          height={box.maxY - box.minY}
        />
        <g transform="scale(1 -1)">
          {[...pieces.flatMap((p) => p.sizes), ...done].map((s, i) => (
            <path key={i} className="traced guide" d={s.runs.map((r) => pathD(r.path)).join('')} />
          ))}
          {size.runs.map((r, i) => (
            <path
              key={i}
              className={`traced ${r.contrast < FAINT_CONTRAST ? 'faint' : ''} ${i === fold ? 'on-fold' : ''}`}
              d={pathD(r.path)}
            />
          ))}
          {foldRun && (
            <path
              className="traced guide"
              d={size.runs
                .filter((_, i) => i !== fold)
                .map((r) => pathD(mirrorAbout(r.path, foldRun[0]!, foldRun.at(-1)!)))
                .join('')}
            />
          )}
        </g>
        {size.clicks.map((c, i) => (
          <Handle
            key={i}
            at={size.closed || size.runs.length === 0 ? c.at : (size.runs[i]?.path[0] ?? c.at)}
            up
            r={3}
            step={0.5}
            name={`corner ${i + 1}`}
            onMove={(to) => put(size.clicks.with(i, { ...c, at: to }))}
          />
        ))}
        {!size.closed && (
          <Handle
            at={cross}
            up
            r={4}
            step={1}
            className="cross"
            name="crosshair; Enter sets a corner, C closes, Backspace takes the last corner back"
            onMove={setCross}
            onKey={(key) => {
              if (key === 'Enter' || key === ' ') click(cross);
              else if (key === 'c' && size.clicks.length >= 3) close();
              else if (key === 'Backspace' && size.clicks.length > 0) put(size.clicks.slice(0, -1));
              else return false;
              return true;
            }}
          />
        )}
      </TableView>
      <aside className="sheet stack pieces-panel" aria-label="Tracing">
        <AccuracyWords flat={flat} />
        <div className="choice" role="group" aria-label="The next run is">
          <button type="button" className="act" aria-pressed={straight} onClick={() => setStraight(true)}>
            Straight
          </button>
          <button type="button" className="act" aria-pressed={!straight} onClick={() => setStraight(false)}>
            Curved
          </button>
        </div>
        <p role="status">
          {said ||
            (size.clicks.length === 0
              ? 'Click the corners of the smallest size (or the largest), one after another round the piece.'
              : size.closed
                ? `${size.clicks.length} runs, ${amountText(
                    size.runs.reduce((sum, r) => sum + pathLength(r.path), 0),
                    show,
                  )} round.`
                : `${size.clicks.length} ${size.clicks.length === 1 ? 'corner' : 'corners'}; click the first one again to close.`)}
          {faint > 0 ? ` Along ${faint} of them no dark line was found.` : ''}
        </p>
        <div className="row">
          {!size.closed && (
            <>
              <button
                type="button"
                className="act"
                disabled={size.clicks.length === 0}
                onClick={() => put(size.clicks.slice(0, -1))}
              >
                Take the last back
              </button>
              <button type="button" className="act" disabled={size.clicks.length < 3} onClick={close}>
                Close the outline
              </button>
            </>
          )}
          {size.closed && (
            <button type="button" className="act" onClick={() => put(size.clicks, false)}>
              Open it again
            </button>
          )}
        </div>
        {size.runs.length > 0 && (
          <ol className="stack tight runs">
            {size.runs.map((r, i) => (
              <li key={i} className="row">
                <span>{amountText(pathLength(r.path), show, { in: 16 })}</span>
                {size.closed && done.length === 0 && (
                  <label className="tick">
                    <input
                      type="checkbox"
                      checked={fold === i}
                      onChange={(e) => {
                        setFold(e.target.checked ? i : null);
                        if (e.target.checked) setCount(1);
                      }}
                    />{' '}
                    on the fold
                  </label>
                )}
              </li>
            ))}
          </ol>
        )}
        {size.closed && (
          <>
            <div className="row about">
              <label className="field">
                <span className="label">This size is called</span>
                <input
                  type="text"
                  value={names[done.length] ?? ''}
                  onChange={(e) => setNames(names.with(done.length, e.target.value))}
                />
              </label>
              {inwards !== true && (
                <button type="button" className="act" disabled={!ready} onClick={() => nextSize(false)}>
                  Next size outwards
                </button>
              )}
              {inwards !== false && (
                <button type="button" className="act" disabled={!ready} onClick={() => nextSize(true)}>
                  Next size inwards
                </button>
              )}
            </div>
            <div className="row about">
              <label className="field">
                <span className="label">Piece</span>
                <input type="text" value={pieceName} onChange={(e) => setPieceName(e.target.value)} />
              </label>
              <label className="field">
                <span className="label">Cut</span>
                <input
                  type="number"
                  min={1}
                  max={20}
                  value={count}
                  onChange={(e) => setCount(Math.max(1, Number(e.target.value)))}
                />
              </label>
              <button type="button" className="act" disabled={!ready} onClick={nextPiece}>
                Another piece
              </button>
            </div>
          </>
        )}
        <div className="row">
          <button
            type="button"
            className="act main"
            disabled={!ready && pieces.length === 0}
            onClick={finish}
          >
            Make it a pattern
          </button>
          <button type="button" className="act" onClick={onBack}>
            Back to the corners
          </button>
        </div>
      </aside>
    </div>
  );
}
