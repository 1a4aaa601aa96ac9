import { distance, type PathPlace, type Point } from '../../geometry/index.ts';
import { amountText } from '../parts/amount.tsx';

/** Up to two places the tape lies on, in table coordinates (y up); on an edge when it caught one. */
export type Tape = readonly {
  readonly at: Point;
  readonly piece?: string;
  readonly edge?: string;
  readonly place?: PathPlace;
}[];

/** The tape as it lies. */
export function MeasureMarks({ tape, show }: { tape: Tape; show: 'in' | 'cm' }) {
  const [a, b] = tape;
  return (
    <g className="measure-marks">
      {a && b && (
        <>
          <path d={`M${a.at.x} ${-a.at.y}L${b.at.x} ${-b.at.y}`} />
          <text x={(a.at.x + b.at.x) / 2} y={-(a.at.y + b.at.y) / 2}>
            {amountText(distance(a.at, b.at), show, { in: 16 })}
          </text>
        </>
      )}
      {tape.map((t, i) => (
        <circle key={i} cx={t.at.x} cy={-t.at.y} />
      ))}
    </g>
  );
}
