import { useCallback, useEffect, useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import type { NestedPiece } from '../../garment/index.ts';
import type { Box, Point } from '../../geometry/index.ts';
import type { Slot } from './arrange.ts';
import { pan, showBox as fill, toTable, zoom, type Camera, type Frame } from './camera.ts';
import { NestCanvas } from './nest-canvas.ts';

export interface TableViewProps {
  readonly label: string;
  /** What the whole view shows. */
  readonly box: Box;
  readonly nest: readonly { readonly piece: NestedPiece; readonly slot: Slot }[] | null;
  /** Table contents in mm with y down (svg); drawn once, moved by the camera. */
  readonly children: ReactNode;
  /** A click or tap that was not a drag, at a table point (y up), with what was under it. */
  readonly onPoint: (at: Point, target: Element, reach: number) => void;
  /** Pointers that begin on these are not the table's: handles. */
  readonly className?: string;
  /** Changes when the view should go there: a box and any new object. */
  readonly goTo?: { readonly box: Box } | null;
  /** A hand moved the view: it is not to be taken away from it. */
  readonly onMove?: () => void;
}
/** Further than this a press is a drag, px. */
const STILL_PX = 5;

/** Height of the buttons at the lower edge, which lie on nothing when all is shown. px. */
const TOOLS_PX = 52;
const showBox = (box: Box, frame: Frame): Camera => fill(box, { ...frame, height: frame.height - TOOLS_PX });
const frameOf = (host: HTMLElement): Frame => ({ width: host.clientWidth, height: host.clientHeight });

/** The cutting table: moved with one finger or the mouse, nearer and farther with two, the wheel, or + and −. */
export function TableView({ label, box, nest, children, onPoint, className, goTo, onMove }: TableViewProps) {
  const host = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const drawer = useRef<NestCanvas | null>(null);
  const [frame, setFrame] = useState<Frame>({ width: 800, height: 600 });
  const [camera, setCamera] = useState<Camera | null>(null);
  const shown = useRef<{ nest: unknown; frame: unknown; light: unknown }>({
    nest: null,
    frame: null,
    light: null,
  });
  const seen = camera ?? showBox(box, frame);

  useLayoutEffect(() => {
    const element = host.current!;
    const measure = (): void => setFrame(frameOf(element));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  // Before the next key or pull is heard, and by the size the table has now: it may have come this very moment.
  useLayoutEffect(() => {
    if (goTo) setCamera(showBox(goTo.box, frameOf(host.current!)));
  }, [goTo]);

  useEffect(() => {
    drawer.current ??= new NestCanvas(canvas.current!);
    const light = `${document.documentElement.dataset['light'] ?? ''}${matchMedia('(prefers-color-scheme: dark)').matches}`;
    const was = shown.current;
    const fresh = was.nest !== nest || was.frame !== frame || was.light !== light;
    shown.current = { nest, frame, light };
    drawer.current.show(nest ?? [], seen, frame, fresh);
  });
  useEffect(() => () => drawer.current?.stop(), []);

  const about = useCallback((x: number, y: number): Point => {
    const r = host.current!.getBoundingClientRect();
    return { x: x - r.left, y: y - r.top };
  }, []);
  const move = useCallback(
    (act: (c: Camera) => Camera) => {
      onMove?.();
      setCamera((c) => act(c ?? showBox(box, frame)));
    },
    [box, frame, onMove],
  );

  useEffect(() => {
    const element = host.current!;
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      const by = Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0016) * (event.deltaMode === 1 ? 18 : 1));
      move((c) => zoom(c, by, about(event.clientX, event.clientY)));
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  }, [move, about]);

  const fingers = useRef(new Map<number, Point>());
  const began = useRef<{ at: Point; target: Element; moved: boolean } | null>(null);

  return (
    <div
      ref={host}
      className={`table-view ${className ?? ''}`}
      role="group"
      aria-label={`${label}. Arrow keys move the view, plus and minus bring it nearer or farther, 0 shows all.`}
      tabIndex={0}
      onPointerDown={(event) => {
        if (event.button !== 0 || (event.target as Element).closest('[data-handle], .table-tools')) return;
        fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
        if (fingers.current.size === 1)
          began.current = {
            at: { x: event.clientX, y: event.clientY },
            target: event.target as Element,
            moved: false,
          };
      }}
      onPointerMove={(event) => {
        const was = fingers.current.get(event.pointerId);
        const start = began.current;
        if (!was || !start) return;
        const now = { x: event.clientX, y: event.clientY };
        if (!start.moved && Math.hypot(now.x - start.at.x, now.y - start.at.y) < STILL_PX) return;
        if (!start.moved) host.current!.setPointerCapture(event.pointerId);
        start.moved = true;
        fingers.current.set(event.pointerId, now);
        if (fingers.current.size === 1) return move((c) => pan(c, now.x - was.x, now.y - was.y));
        const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1];
        if (!other) return;
        const by =
          Math.hypot(now.x - other.x, now.y - other.y) / (Math.hypot(was.x - other.x, was.y - other.y) || 1);
        const middle = about((now.x + other.x) / 2, (now.y + other.y) / 2);
        move((c) => pan(zoom(c, by, middle), (now.x - was.x) / 2, (now.y - was.y) / 2));
      }}
      onPointerUp={(event) => {
        const start = began.current;
        fingers.current.delete(event.pointerId);
        if (!start || fingers.current.size > 0) return;
        began.current = null;
        if (!start.moved)
          onPoint(toTable(seen, about(event.clientX, event.clientY)), start.target, 14 / seen.k);
      }}
      onPointerCancel={(event) => {
        fingers.current.delete(event.pointerId);
        began.current = null;
      }}
      onKeyDown={(event) => {
        if ((event.target as Element).closest('input, select, button')) return;
        const middle = { x: frame.width / 2, y: frame.height / 2 };
        const step = 60;
        const acts: Record<string, (c: Camera) => Camera> = {
          ArrowLeft: (c) => pan(c, step, 0),
          ArrowRight: (c) => pan(c, -step, 0),
          ArrowUp: (c) => pan(c, 0, step),
          ArrowDown: (c) => pan(c, 0, -step),
          '+': (c) => zoom(c, 1.25, middle),
          '=': (c) => zoom(c, 1.25, middle),
          '-': (c) => zoom(c, 0.8, middle),
          '0': () => showBox(box, frame),
        };
        const act = acts[event.key];
        if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
        event.preventDefault();
        move(act);
      }}
    >
      <canvas ref={canvas} aria-hidden="true" />
      <svg width={frame.width} height={frame.height} style={{ '--k': seen.k } as React.CSSProperties}>
        <defs>
          <marker
            id="grain-end"
            viewBox="-5 -5 10 10"
            markerWidth="9"
            markerHeight="9"
            markerUnits="strokeWidth"
            orient="auto-start-reverse"
          >
            <path d="M-4 -3L4 0L-4 3Z" fill="context-stroke" />
          </marker>
        </defs>
        <g transform={`scale(${seen.k}) translate(${-seen.x} ${seen.y})`}>{children}</g>
      </svg>
      <div className="table-tools row">
        <button
          type="button"
          className="act"
          aria-label="Nearer"
          onClick={() => move((c) => zoom(c, 1.25, { x: frame.width / 2, y: frame.height / 2 }))}
        >
          +
        </button>
        <button
          type="button"
          className="act"
          aria-label="Farther"
          onClick={() => move((c) => zoom(c, 0.8, { x: frame.width / 2, y: frame.height / 2 }))}
        >
          −
        </button>
        <button type="button" className="act" onClick={() => move(() => showBox(box, frame))}>
          All
        </button>
      </div>
    </div>
  );
}
