import { observableOf } from '../../alter/index.ts';
import { bodyShape } from '../drawing/body-shape.ts';
import { Figure } from '../drawing/figure.tsx';
import { garmentShape } from '../drawing/garment-shape.ts';
import { smoothPath } from '../drawing/smooth.ts';
import type { ReadyBench } from '../station/bench.ts';
import { drawnOn, linesOf, type DrawnLine, type SightLine } from './sight-lines.ts';

const otherHalf = { front: 'back', back: 'front' } as const;

interface Props {
  readonly bench: ReadyBench;
  readonly view: 'front' | 'back';
  readonly chosen: SightLine | null;
  readonly onChoose: (line: SightLine) => void;
}

/** The garment on the person, front or back; each line that can be judged in a trial can be pointed at. */
export function TrialFigure({ bench, view, chosen, onChoose }: Props) {
  const { fitting, made } = bench;
  const shape = bodyShape(fitting.body);
  const garment = garmentShape(shape, fitting.pattern.garment, made.plan.levels, made.garment, view);
  const from = garment.top > shape.levels.waist.y - 60 ? shape.levels.bust.y - 60 : -20;
  const to = Math.min(shape.stature + 25, Math.max(garment.bottom + 120, shape.points.crotch.y + 60));
  const noted = new Set(
    fitting.observations.flatMap((o) => (o.where === otherHalf[view] ? [] : [observableOf(o.line)?.id])),
  );
  return (
    <figure className="trial-figure">
      <Figure
        body={fitting.body}
        label={`The ${view} of the garment: point at what you see`}
        handles
        crop={() => ({ from, to })}
        over={() => (
          <g className="garment">
            {garment.sleeves.map((d) => (
              <path key={d.slice(0, 24)} d={d} />
            ))}
            <path d={garment.trunk} />
            {drawnOn(shape, garment, linesOf(made.garment))
              .filter((l) => l.view === view)
              .map((l) => {
                const d = smoothPath(l.points);
                const pressed = chosen?.line.id === l.line.id && chosen.view === view;
                return (
                  <g
                    key={l.line.id}
                    className="sight"
                    role="button"
                    tabIndex={0}
                    aria-pressed={pressed}
                    aria-label={l.name}
                    data-noted={noted.has(l.line.id) || undefined}
                    onClick={() => onChoose(l)}
                    onKeyDown={(event) => {
                      if (event.key !== 'Enter' && event.key !== ' ') return;
                      event.preventDefault();
                      onChoose(l);
                    }}
                  >
                    <path className="grasp" d={d} />
                    <path className="shown" d={d} />
                    <title>{l.name}</title>
                    <SightName line={l} />
                  </g>
                );
              })}
          </g>
        )}
      />
      <figcaption>{view}</figcaption>
    </figure>
  );
}

/** The name of a line, over its middle while it is pointed at. A seam that runs down has it beside its upper end. */
function SightName({ line: { line, points } }: { line: DrawnLine }) {
  const [first, middle] = [points[0]!, points[Math.floor(points.length / 2)]!];
  const down = Math.abs(points.at(-1)!.y - first.y) > Math.abs(points.at(-1)!.x - first.x);
  const at = down ? first : middle;
  return (
    <text className="sight-name" x={at.x} y={at.y - 14} textAnchor="middle" aria-hidden="true">
      {line.name}
    </text>
  );
}
