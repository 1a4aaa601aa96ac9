import { useRef } from 'react';
import type { Point } from '../../geometry/index.ts';

interface Props {
  readonly at: Point;
  readonly name: string;
  /** Of the drawing's units, a key's step. */
  readonly step: number;
  /** y grows upwards in what is dragged (mm), though not in the picture. */
  readonly up?: boolean;
  readonly r: number;
  readonly onMove: (to: Point) => void;
  readonly onDrop?: (to: Point) => void;
  readonly onKey?: (key: string) => boolean;
  readonly className?: string;
}

/** A place in a picture to be dragged or moved by the arrow keys. */
export function Handle({ at, name, step, up, r, onMove, onDrop, onKey, className }: Props) {
  const from = useRef<{ x: number; y: number; at: Point; scale: number } | null>(null);
  const sign = up ? -1 : 1;
  return (
    <circle
      data-handle
      role="button"
      tabIndex={0}
      aria-label={`${name}; arrow keys move it`}
      className={`photo-handle ${className ?? ''}`}
      cx={at.x}
      cy={sign * at.y}
      r={r}
      onPointerDown={(event) => {
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
        const scale = 1 / (event.currentTarget.getScreenCTM()?.a ?? 1);
        from.current = { x: event.clientX, y: event.clientY, at, scale };
      }}
      onPointerMove={(event) => {
        const start = from.current;
        if (!start) return;
        onMove({
          x: start.at.x + (event.clientX - start.x) * start.scale,
          y: start.at.y + sign * (event.clientY - start.y) * start.scale,
        });
      }}
      onPointerUp={() => {
        from.current = null;
        onDrop?.(at);
      }}
      onKeyDown={(event) => {
        const ways: Record<string, readonly [number, number]> = {
          ArrowLeft: [-step, 0],
          ArrowRight: [step, 0],
          ArrowUp: [0, -step * sign],
          ArrowDown: [0, step * sign],
        };
        const way = ways[event.key];
        if (!way && !onKey?.(event.key)) return;
        event.preventDefault();
        event.stopPropagation();
        if (!way) return;
        const far = event.shiftKey ? 10 : 1;
        const to = { x: at.x + way[0] * far, y: at.y + way[1] * far };
        onMove(to);
        onDrop?.(to);
      }}
    >
      <title>{name}</title>
    </circle>
  );
}
