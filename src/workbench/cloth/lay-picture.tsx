import type { Pin, LaySettings } from '../../garment/index.ts';
import { useRef, useState } from 'react';
import type { Point } from '../../geometry/index.ts';
import { ringD } from '../drawing/path-d.ts';
import { amountText } from '../parts/amount.tsx';
import type { LayPicture as Picture, Lying } from './lay-worker.ts';
import { samePlace } from './pinned.tsx';

interface Props {
  readonly picture: Picture;
  readonly settings: LaySettings;
  readonly show: 'in' | 'cm';
  readonly onPins: (pins: readonly Pin[], say: string) => void;
}

/** Arrow keys move as one sees it. mm. */
const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-10, 0],
  ArrowRight: [10, 0],
  ArrowUp: [0, 10],
  ArrowDown: [0, -10],
};
const STEPS_DOWN: typeof STEPS = {
  ArrowLeft: [0, -10],
  ArrowRight: [0, 10],
  ArrowUp: [-10, 0],
  ArrowDown: [10, 0],
};

const isPinned = (pins: readonly Pin[], l: Lying): boolean => pins.some((p) => samePlace(p, l));
const pinOf = ({ piece, copy, x, y, rotation, mirrored }: Lying): Pin => ({
  piece,
  copy,
  x,
  y,
  rotation,
  mirrored,
});

/** On a screen narrower than this the cloth is drawn along it, cut end at the top. px. */
const NARROW_PX = 700;
/** Whether the cloth is drawn down the screen; asked once, since a turned telephone would turn the lay under the hand. */
export const hangsDown = (): boolean => innerWidth < NARROW_PX;

/** A place on the screen in the picture's own millimetres, whichever way it is turned. */
function inPicture(event: React.PointerEvent, picture: SVGGElement): Point {
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(picture.getScreenCTM()!.inverse());
  return { x: at.x, y: -at.y };
}

/** The cloth as it is spread, cut end at the left, fold or lower selvage below. A piece can be pinned where it lies, or dragged and so pinned; the rest is filled round it. */
export function LayPicture({ picture, settings, show, onPins }: Props) {
  const { pins, fold, selvage, spoilt, remnant } = settings;
  const { spread, across, lying } = picture;
  const [held, setHeld] = useState<{ key: string; dx: number; dy: number } | null>(null);
  const from = useRef<Point | null>(null);
  const whole = useRef<SVGGElement>(null);
  const [down] = useState(hangsDown);
  const room = across * 0.04 + 10;
  const size = across / (down ? 18 : 28);
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
      className={`lay-picture ${down ? 'down' : ''}`}
      viewBox={
        down
          ? `${-room} ${-room} ${across + 2 * room} ${spread + 2 * room}`
          : `${-room} ${-across - room} ${spread + 2 * room} ${across + 2 * room}`
      }
      role="group"
      aria-label="The lay: Enter pins a piece or lets it go, arrow keys move it"
    >
      <g ref={whole} transform={down ? 'rotate(90)' : undefined}>
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
                from.current = inPicture(event, whole.current!);
              }}
              onPointerMove={(event) => {
                const start = from.current;
                if (!start) return;
                const at = inPicture(event, whole.current!);
                setHeld({ key, dx: at.x - start.x, dy: at.y - start.y });
              }}
              onPointerUp={() => {
                from.current = null;
                if (!held || Math.hypot(held.dx, held.dy) < 4) toggle(l);
                else moved(l, held.dx, held.dy);
                setHeld(null);
              }}
              onKeyDown={(event) => {
                const by10 = (down ? STEPS_DOWN : STEPS)[event.key];
                if (!by10 && event.key !== 'Enter' && event.key !== ' ') return;
                event.preventDefault();
                if (by10) moved(l, ...by10);
                else toggle(l);
              }}
            >
              <path d={l.d} transform="scale(1 -1)" />
              <title>{`${l.number} ${l.name}`}</title>
              {l.named && (
                <text
                  fontSize={l.named.size}
                  dominantBaseline="central"
                  textAnchor="middle"
                  transform={`translate(${l.named.at.x} ${-l.named.at.y}) rotate(${-l.named.turn})`}
                >
                  {l.number} {l.name}
                </text>
              )}
              <g transform={`translate(${l.at.x} ${-l.at.y}) ${down ? 'rotate(-90)' : ''}`}>
                {!l.named && (
                  <text fontSize={size} dominantBaseline="central" textAnchor="middle">
                    {l.number}
                  </text>
                )}
                {pinned && <circle cy={-size * 1.1} r={size * 0.4} className="pin" />}
              </g>
            </g>
          );
        })}
      </g>
    </svg>
  );
}
