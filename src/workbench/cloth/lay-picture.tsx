import { useRef, useState } from 'react';
import type { Pin } from '../../layout/index.ts';
import { ringD } from '../drawing/path-d.ts';
import { amountText } from '../parts/amount.tsx';
import type { LaySettings } from './lay-settings.ts';
import type { LayPicture as Picture, Lying } from './lay-worker.ts';
import { samePlace } from './pinned.tsx';

interface Props {
  readonly picture: Picture;
  readonly settings: LaySettings;
  readonly show: 'in' | 'cm';
  readonly onPins: (pins: readonly Pin[], say: string) => void;
}

const isPinned = (pins: readonly Pin[], l: Lying): boolean => pins.some((p) => samePlace(p, l));
const pinOf = ({ piece, copy, x, y, rotation, mirrored }: Lying): Pin => ({
  piece,
  copy,
  x,
  y,
  rotation,
  mirrored,
});

/** The cloth as it is spread, cut end at the left, fold or lower selvage below. A piece can be pinned where it lies, or dragged and so pinned; the rest is filled round it. */
export function LayPicture({ picture, settings, show, onPins }: Props) {
  const { pins, fold, selvage, spoilt, remnant } = settings;
  const { spread, across, lying } = picture;
  const [held, setHeld] = useState<{ key: string; dx: number; dy: number } | null>(null);
  const from = useRef<{ x: number; y: number; scale: number } | null>(null);
  const room = across * 0.04 + 10;
  const without = (l: Lying): readonly Pin[] => pins.filter((p) => !samePlace(p, l));
  const toggle = (l: Lying): void => {
    const pinned = isPinned(pins, l);
    onPins(
      pinned ? without(l) : [...pins, pinOf(l)],
      pinned ? `${l.name}: let go` : `${l.name}: pinned where it lies`,
    );
  };
  const moved = (l: Lying, dx: number, dy: number): void =>
    onPins([...without(l), { ...pinOf(l), x: l.x + dx, y: l.y + dy }], `${l.name}: put elsewhere and pinned`);
  return (
    <svg
      className="lay-picture"
      viewBox={`${-room} ${-across - room} ${spread + 2 * room} ${across + 2 * room}`}
      role="group"
      aria-label="The lay: Enter pins a piece or lets it go, arrow keys move it"
    >
      <g transform="scale(1 -1)">
        <rect className="bolt" x={0} y={0} width={spread} height={across} />
        {fold !== 'none' && fold !== 'crosswise' && <path className="fold-edge" d={`M0 0H${spread}`} />}
        {fold === 'crosswise' && <path className="fold-edge" d={`M0 0V${across}`} />}
        {fold === 'none' && remnant.length >= 3 && <path className="remnant" d={ringD(remnant)} />}
        {fold === 'none' &&
          spoilt.map((s, i) => (
            <rect key={i} className="spoilt" x={s.fromEnd} y={s.fromEdge} width={s.long} height={s.high} />
          ))}
        <path
          className="selvage"
          d={`M0 ${across - selvage}H${spread}${fold === 'none' || fold === 'crosswise' ? `M0 ${selvage}H${spread}` : ''}`}
        />
      </g>
      {lying.map((l) => {
        const key = `${l.piece}/${l.copy}`;
        const by = held?.key === key ? held : { dx: 0, dy: 0 };
        const pinned = isPinned(pins, l);
        return (
          <g
            key={key}
            transform={`translate(${by.dx} ${-by.dy})`}
            className="lying"
            role="button"
            tabIndex={0}
            aria-pressed={pinned}
            aria-label={`${l.number} ${l.name}${l.copy ? `, copy ${l.copy + 1}` : ''}, ${amountText(l.at.x, show)} from the cut end${pinned ? ', pinned' : ''}`}
            onPointerDown={(event) => {
              event.currentTarget.setPointerCapture(event.pointerId);
              from.current = {
                x: event.clientX,
                y: event.clientY,
                scale: 1 / (event.currentTarget.ownerSVGElement!.getScreenCTM()?.a ?? 1),
              };
            }}
            onPointerMove={(event) => {
              const start = from.current;
              if (start)
                setHeld({
                  key,
                  dx: (event.clientX - start.x) * start.scale,
                  dy: -(event.clientY - start.y) * start.scale,
                });
            }}
            onPointerUp={() => {
              from.current = null;
              if (!held || Math.hypot(held.dx, held.dy) < 4) toggle(l);
              else moved(l, held.dx, held.dy);
              setHeld(null);
            }}
            onKeyDown={(event) => {
              const step: Record<string, [number, number]> = {
                ArrowLeft: [-10, 0],
                ArrowRight: [10, 0],
                ArrowUp: [0, 10],
                ArrowDown: [0, -10],
              };
              const by10 = step[event.key];
              if (!by10 && event.key !== 'Enter' && event.key !== ' ') return;
              event.preventDefault();
              if (by10) moved(l, ...by10);
              else toggle(l);
            }}
          >
            <path d={l.d} transform="scale(1 -1)" />
            <text x={l.at.x} y={-l.at.y} fontSize={across / 28} textAnchor="middle">
              {l.number}
            </text>
            {pinned && <circle cx={l.at.x} cy={-l.at.y - across / 24} r={across / 70} className="pin" />}
          </g>
        );
      })}
    </svg>
  );
}
