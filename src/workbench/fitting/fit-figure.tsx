import { useRef } from 'react';
import { levelName, MM_PER } from '../../garment/index.ts';
import type { LevelPlan } from '../../garment/index.ts';
import { bodyShape } from '../drawing/body-shape.ts';
import { Figure } from '../drawing/figure.tsx';
import { garmentShape, type Hang } from '../drawing/garment-shape.ts';
import { amountText } from '../parts/amount.tsx';
import type { ReadyBench } from '../station/bench.ts';
import { setEase } from './choices.ts';

/** Steps of a slide where lengths are shown in inches, mm. */
const QUARTER_INCH = MM_PER.in / 4;

/** The person with the garment round them: the gap between the two lines is the ease, and can be taken hold of. */
export function FitFigure({ bench }: { bench: ReadyBench }) {
  const { fitting, made } = bench;
  const shape = bodyShape(fitting.body);
  const garment = garmentShape(shape, fitting.pattern.garment, made.plan.levels, made.garment);
  const from = garment.top > shape.levels.waist.y - 60 ? shape.levels.bust.y - 60 : -20;
  const to = Math.min(shape.stature + 25, Math.max(garment.bottom + 120, shape.points.crotch.y + 60));
  return (
    <Figure
      body={fitting.body}
      className="fit-figure"
      handles
      label={`${fitting.body.name} in ${fitting.pattern.name}: ${made.plan.levels.map((l) => `${levelName(l.level, fitting.body.wearer)} ease ${amountText(l.target - l.body, bench.show, { in: 16 })}`).join(', ')}`}
      crop={() => ({ from, to })}
      over={() => (
        <g className="garment">
          {garment.sleeves.map((d) => (
            <path key={d.slice(0, 24)} d={d} />
          ))}
          <path d={garment.trunk} />
          {garment.hangs.map((hang) => {
            const plan = made.plan.levels.find((l) => l.level === hang.level)!;
            return <Hold key={hang.level} hang={hang} plan={plan} bench={bench} />;
          })}
        </g>
      )}
    />
  );
}

/** A handle at the garment's side: out for more ease, in for less; arrow keys do the same. */
function Hold({ hang, plan, bench }: { hang: Hang; plan: LevelPlan; bench: ReadyBench }) {
  const from = useRef<{ x: number; ease: number; scale: number } | null>(null);
  const ease = plan.target - plan.body;
  const name = levelName(plan.level, bench.fitting.body.wearer);
  const rounded = (mm: number): number =>
    bench.show === 'in' ? Math.round(mm / QUARTER_INCH) * QUARTER_INCH : Math.round(mm / 5) * 5;
  const easeAt = (event: React.PointerEvent): number => {
    const start = from.current!;
    return rounded(start.ease + ((event.clientX - start.x) * start.scale * plan.body) / hang.bodyHalf);
  };
  // A pull is one decision by itself; presses of a key in a row are one.
  const keep = (mm: number): void =>
    bench.change(setEase(plan.level, mm), `${name}: ease ${amountText(mm, bench.show, { in: 16 })}`);
  return (
    <g className="hold">
      <path className="gap" d={`M${hang.bodyHalf} ${hang.y}H${hang.half}`} />
      <path className="level" d={`M${-hang.half} ${hang.y}H${hang.half}`} />
      <circle
        cx={hang.half}
        cy={hang.y}
        r={12}
        role="slider"
        tabIndex={0}
        aria-label={`${name}: ease`}
        aria-valuenow={Math.round(ease)}
        aria-valuemin={-200}
        aria-valuemax={600}
        aria-valuetext={amountText(ease, bench.show, { in: 16 })}
        onPointerDown={(event) => {
          const svg = event.currentTarget.ownerSVGElement!;
          event.currentTarget.setPointerCapture(event.pointerId);
          from.current = { x: event.clientX, ease, scale: 1 / (svg.getScreenCTM()?.a ?? 1) };
        }}
        onPointerMove={(event) => from.current && bench.attempt(setEase(plan.level, easeAt(event)))}
        onPointerUp={(event) => {
          if (!from.current) return;
          const next = easeAt(event);
          from.current = null;
          if (Math.abs(next - ease) < 0.01 && event.detail !== 0) bench.attempt(null);
          keep(next);
        }}
        onKeyDown={(event) => {
          const step = bench.show === 'in' ? QUARTER_INCH : 5;
          const by =
            event.key === 'ArrowRight' || event.key === 'ArrowUp'
              ? step
              : event.key === 'ArrowLeft' || event.key === 'ArrowDown'
                ? -step
                : 0;
          if (by === 0) return;
          event.preventDefault();
          // From the newest choice, not from the plan on the screen: fast presses come before it is redrawn.
          bench.change(
            (f) => setEase(plan.level, rounded((f.choices.ease[plan.level] ?? ease) + by))(f),
            `${name}: ease changed by key`,
            `ease/${plan.level}`,
          );
        }}
      />
      <text x={hang.half + 28} y={hang.y + 16} className="hold-amount">
        <title>{name}</title>
        {amountText(ease, bench.show, { signed: true, in: 16 })}
      </text>
    </g>
  );
}
