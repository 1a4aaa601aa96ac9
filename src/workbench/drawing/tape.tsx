import type { MeasureId } from '../../garment/index.ts';
import type { BodyShape } from './body-shape.ts';
import { runPath } from './smooth.ts';
import { tapePath } from './tape-path.ts';

/** The tape laid on the figure for one measure: solid where it is seen, dashed where it runs behind; a ring at each landmark. */
export function Tape({ id, shape }: { id: MeasureId; shape: BodyShape }) {
  const way = tapePath(id, shape);
  if (!way) return null;
  if (way.kind === 'round') {
    const { at, half, drop, tilt } = way;
    const high = half * drop;
    return (
      <g className="tapeline" transform={`translate(${at.x} ${at.y})${tilt ? ` rotate(${tilt})` : ''}`}>
        <path className="hidden" d={`M${-half} 0A${half} ${high} 0 0 1 ${half} 0`} />
        <path d={`M${-half} 0A${half} ${high} 0 0 0 ${half} 0`} />
      </g>
    );
  }
  const ends = [way.points[0]!, way.points.at(-1)!];
  return (
    <g className="tapeline">
      <path className={way.behind ? 'hidden' : ''} d={runPath(way.points)} />
      {ends.map((p, i) => (
        <circle key={i} cx={p.x} cy={p.y} r={11} />
      ))}
      {way.behind && (
        <text x={ends[1]!.x + 26} y={(ends[0]!.y + ends[1]!.y) / 2}>
          at the back
        </text>
      )}
    </g>
  );
}
