import { tellTrouble } from '../words/fault.ts';
import { tellIn } from '../../garment/index.ts';
import { useCallback, useEffect, useMemo, useReducer, useRef, useState } from 'react';
import type { Click, Traced } from '../../exchange/index.ts';
import type { Point } from '../../geometry/index.ts';
import { Latest, type Caller } from '../call/index.ts';
import { go, hrefTo } from '../station/route.ts';
import { leaveFile } from '../station/waiting-file.ts';
import { TableView } from '../table/table-view.tsx';
import { Handle } from './handle.tsx';
import type { FlatPhoto, PhotoDoings } from './photo-worker.ts';
import { lineName } from './inside-line.ts';
import { TracePanel } from './trace-panel.tsx';
import { TracedLines } from './traced-lines.tsx';
import { tracedDrawing, tracedFile } from './traced-piece.ts';
import { BEGUN, canClose, finished, traceOn } from './tracing.ts';

interface Props {
  readonly name: string;
  readonly flat: FlatPhoto;
  readonly worker: Caller<PhotoDoings>;
  readonly show: 'in' | 'cm';
  readonly onBack: () => void;
}

/** The flat picture on the table: corners are clicked, the lines between them snap to the darkest line; size after size, piece after piece. */
export function TraceTable({ name, flat, worker, show, onBack }: Props) {
  const url = useMemo(() => URL.createObjectURL(flat.picture), [flat]);
  useEffect(() => () => URL.revokeObjectURL(url), [url]);
  const [tracing, act] = useReducer(traceOn, BEGUN);
  const { box } = flat;
  const [cross, setCross] = useState<Point>({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 });
  const { size, outline, line } = tracing;
  const { clicks, closed, lines } = size;

  const latest = useRef<Latest<{ clicks: readonly Click[]; closed: boolean }, readonly Traced[]> | null>(
    null,
  );
  const fault = useCallback(
    (error: unknown): void => act({ act: 'fault', message: tellTrouble(error, tellIn(show)) }),
    [show],
  );
  // The worker follows the corners: each time one is set, moved or taken back the lines between them are traced anew.
  useEffect(() => {
    if (clicks.length < 2) return;
    latest.current ??= new Latest((ask) => worker.call('trace', ask));
    latest.current.ask(
      { clicks, closed },
      (runs) => act({ act: 'traced', outline, clicks, closed, runs }),
      fault,
    );
  }, [worker, outline, clicks, closed, fault]);

  function nextSize(inwards: boolean): void {
    worker
      .call('next', { runs: size.runs.map((r) => r.path), clicks, inwards })
      .then((found) => act({ act: 'next-size', outline, inwards, ...found }), fault);
  }
  function finish(): void {
    const made = finished(tracing);
    if (!made) return;
    leaveFile(tracedFile(tracedDrawing(name, made.pieces, made.sizes)));
    go(hrefTo('patterns', 'from-a-file'));
  }
  return (
    <div className="pieces-body">
      <TableView
        label="The picture laid flat"
        box={box}
        nest={null}
        className="trace"
        onPoint={(at, target) => {
          if (!target.closest('[data-handle]')) act({ act: 'click', at });
        }}
      >
        <image
          href={url}
          x={box.minX}
          y={-box.maxY}
          width={box.maxX - box.minX}
          height={box.maxY - box.minY}
        />
        <TracedLines tracing={tracing} />
        {clicks.map((c, i) => (
          <Handle
            key={i}
            at={closed ? c.at : (size.runs[i]?.path[0] ?? c.at)}
            up
            r={3}
            step={0.5}
            name={`corner ${i + 1}`}
            onMove={(to) => act({ act: 'move', corner: i, to })}
          />
        ))}
        {lines.flatMap(({ means, ends }, i) =>
          ([0, 1] as const).map((end) => (
            <Handle
              key={`line ${i} ${end}`}
              at={ends[end]}
              up
              r={2.4}
              step={0.5}
              name={`${lineName(means)}, ${end === 0 ? 'one' : 'other'} end`}
              onMove={(to) => act({ act: 'move-line', line: i, end, to })}
            />
          )),
        )}
        {(!closed || line) && (
          <Handle
            at={cross}
            up
            r={4}
            step={1}
            className="cross"
            name={
              line
                ? `crosshair; Enter sets an end of the ${lineName(line.means)}`
                : 'crosshair; Enter sets a corner, C closes, Backspace takes the last corner back'
            }
            onMove={setCross}
            onKey={(key) => {
              if (key === 'Enter' || key === ' ') act({ act: 'click', at: cross });
              else if (key === 'c' && canClose(tracing)) act({ act: 'close' });
              else if (key === 'Backspace' && !closed && clicks.length > 0) act({ act: 'take-back' });
              else return false;
              return true;
            }}
          />
        )}
      </TableView>
      <TracePanel
        tracing={tracing}
        act={act}
        flat={flat}
        show={show}
        onNextSize={nextSize}
        onFinish={finish}
        onBack={onBack}
      />
    </div>
  );
}
