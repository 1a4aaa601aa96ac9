import { useRef } from 'react';
import { MM_PER, renderPhrase, tellIn } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import type { Point } from '../../geometry/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { amountText } from '../parts/amount.tsx';
import type { Grip } from '../worker/grips.ts';
import { amountIn } from '../worker/slopes.ts';
import type { Slot } from '../table/arrange.ts';
import { putParam } from '../../desk/index.ts';

/** What a pull or a key is rounded to: an eighth of an inch or a millimetre; half degrees. */
const stepOf = (kind: 'length' | 'angle', show: 'in' | 'cm'): number =>
  kind === 'angle' ? 0.5 : show === 'in' ? MM_PER.in / 8 : 1;

interface Props {
  readonly bench: ReadyBench;
  readonly step: string;
  readonly grips: readonly Grip[];
  readonly chosen: string | null;
  readonly slotOf: (p: DrawnPiece) => Slot;
}

/** Threads to pull: each amount of the alteration at the corner that answers most to it. */
export function Grips({ bench, step, grips, chosen, slotOf }: Props) {
  const shown =
    chosen && grips.some((g) => g.piece === chosen) ? grips.filter((g) => g.piece === chosen) : grips;
  return (
    <>
      {shown.map((g) => {
        const now = bench.made.garment.pieces;
        // A later step may have parted the piece in left and right: the thread is then on the first of them.
        const piece = now.find((p) => p.id === g.piece) ?? now.find((p) => p.of === g.piece);
        return (
          piece && (
            <OneGrip key={`${g.param}/${g.piece}`} grip={g} slot={slotOf(piece)} bench={bench} step={step} />
          )
        );
      })}
    </>
  );
}

function OneGrip({ grip, slot, bench, step }: { grip: Grip; slot: Slot; bench: ReadyBench; step: string }) {
  const from = useRef<{ x: number; y: number; amount: number; scale: number } | null>(null);
  const { show } = bench;
  const name = renderPhrase(grip.name, tellIn(show));
  const now = amountIn(bench.fitting, step, grip.param) ?? grip.amount;
  const off = now - grip.amount;
  const at: Point = {
    x: grip.at.x + slot.dx + grip.gain.x * off,
    y: grip.at.y + slot.dy + grip.gain.y * off,
  };
  const size = Math.hypot(grip.gain.x, grip.gain.y);
  const way = { x: grip.gain.x / size, y: grip.gain.y / size };
  const unit = stepOf(grip.kind, show);
  const round = (v: number): number => Math.min(grip.max, Math.max(grip.min, Math.round(v / unit) * unit));
  const words = (v: number): string =>
    grip.kind === 'angle' ? `${v.toFixed(1)}°` : amountText(v, show, { signed: true, in: 8 });
  const say = (v: number): string => `${name}: ${words(v)}`;
  const pulled = (event: React.PointerEvent): number => {
    const start = from.current!;
    const v = { x: (event.clientX - start.x) * start.scale, y: -(event.clientY - start.y) * start.scale };
    return round(start.amount + (v.x * grip.gain.x + v.y * grip.gain.y) / (size * size));
  };
  // A pull is one decision by itself; presses of a key in a row are one.
  const keep = (v: number, merge?: string): void =>
    bench.change(putParam(step, grip.param, v), say(v), merge);
  return (
    <g className="grip" transform={`translate(${at.x} ${-at.y})`}>
      <path d={`M${-way.x * 26} ${way.y * 26}L${way.x * 26} ${-way.y * 26}`} />
      <circle
        data-handle
        data-param={grip.param}
        role="slider"
        tabIndex={0}
        aria-label={`${name}, at the piece`}
        aria-valuemin={grip.min}
        aria-valuemax={grip.max}
        aria-valuenow={Math.round(now * 10) / 10}
        aria-valuetext={words(now)}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          const scale =
            1 /
            (event.currentTarget.ownerSVGElement!.querySelector<SVGGElement>(':scope > g')!.getScreenCTM()
              ?.a ?? 1);
          from.current = { x: event.clientX, y: event.clientY, amount: now, scale };
        }}
        onPointerMove={(event) => {
          if (!from.current) return;
          const next = pulled(event);
          if (next !== now) bench.attempt(putParam(step, grip.param, next));
        }}
        onPointerUp={(event) => {
          if (!from.current) return;
          const next = pulled(event);
          from.current = null;
          if (next === grip.amount) bench.attempt(null);
          else keep(next);
        }}
        onKeyDown={(event) => {
          const by = ['ArrowUp', 'ArrowRight'].includes(event.key)
            ? 1
            : ['ArrowDown', 'ArrowLeft'].includes(event.key)
              ? -1
              : 0;
          if (by === 0) return;
          event.preventDefault();
          event.stopPropagation();
          keep(round(now + by * unit), `key/${step}/${grip.param}`);
        }}
      />
      <title>{name}</title>
      <text>{Math.abs(now) > 0.05 ? words(now) : ''}</text>
    </g>
  );
}
