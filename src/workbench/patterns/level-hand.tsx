import { useRef, useState } from 'react';
import { LEVELS, MM_PER, levelName, type InnerLine } from '../../garment/index.ts';
import { pathEnd, pathStart } from '../../geometry/index.ts';
import { pathD } from '../drawing/path-d.ts';

/** How far an arrow key moves a line: a millimetre, or a sixteenth of an inch. */
const STEP = { cm: 1, in: MM_PER.in / 16 } as const;

/** A level line that is taken hold of and moved up and down, with the pointer or with the arrow keys; one that nobody drew is dashed. */
export function LevelHand({
  line,
  show,
  size,
  reach,
  onMove,
}: {
  line: InnerLine<'one'>;
  show: 'in' | 'cm';
  size: number;
  /** Lowest and highest of the piece. */
  reach: readonly [number, number];
  onMove: (mm: number) => void;
}) {
  const [by, setBy] = useState(0);
  const held = useRef<{ y: number; perPixel: number } | null>(null);
  const [a, b] = [pathStart(line.path), pathEnd(line.path)];
  const y = (a.y + b.y) / 2;
  const name = levelName(line.level ?? LEVELS[0]!.level);
  const release = (): void => {
    held.current = null;
    if (by !== 0) onMove(by);
    setBy(0);
  };
  return (
    <g
      role="slider"
      tabIndex={0}
      aria-orientation="vertical"
      aria-label={`${name} line`}
      aria-valuemin={Math.floor(reach[0])}
      aria-valuemax={Math.ceil(reach[1])}
      aria-valuenow={Math.round(y + by)}
      aria-valuetext={line.proposed ? 'proposed' : 'drawn'}
      className={line.proposed ? 'level-hand proposed' : 'level-hand'}
      onKeyDown={(event) => {
        const way = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
        if (way === 0) return;
        event.preventDefault();
        onMove(way * STEP[show] * (event.shiftKey ? 10 : 1));
      }}
      onPointerDown={(event) => {
        const scale = event.currentTarget.ownerSVGElement?.getScreenCTM()?.d;
        if (!scale) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        held.current = { y: event.clientY, perPixel: 1 / scale };
      }}
      onPointerMove={(event) => {
        if (held.current) setBy((held.current.y - event.clientY) * held.current.perPixel);
      }}
      onPointerUp={release}
      onPointerCancel={() => {
        held.current = null;
        setBy(0);
      }}
    >
      <g transform={`translate(0 ${-by}) scale(1 -1)`}>
        <path className="grasp" d={pathD(line.path)} />
        <path className="shown" d={pathD(line.path)} />
      </g>
      <text x={(a.x + b.x) / 2} y={-(y + by) - size / 3} fontSize={size} textAnchor="middle">
        {name}
      </text>
    </g>
  );
}
