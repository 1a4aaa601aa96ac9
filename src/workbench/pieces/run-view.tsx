import { useMemo } from 'react';
import { boxAround, movePoint, pathBox, pathLength, type Box } from '../../geometry/index.ts';
import { outlineD, pathD } from '../drawing/path-d.ts';
import { Amount } from '../parts/amount.tsx';
import { legPath, type RunThrough } from './run-through.ts';
import { motionMatrix } from './seat.ts';

/** A turn below this is not seen in cloth: 2° is the usual bound for a line that is to run smooth (docs/trade.md). */
const SMOOTH_DEG = 2;

const turnWords = (turn: number): string =>
  Math.abs(turn) < SMOOTH_DEG
    ? 'runs straight on'
    : `${turn > 0 ? 'turns inwards' : 'turns outwards'} by ${Math.abs(turn).toFixed(0)}°`;

interface Props {
  readonly runs: readonly RunThrough[];
  readonly run: RunThrough | undefined;
  readonly show: 'in' | 'cm';
  readonly onRun: (id: string) => void;
}

/** Pieces put edge to edge along a hem, a neckline or an armhole: where the line crosses a seam, one sees whether it runs through. */
export function RunView({ runs, run, show, onRun }: Props) {
  const box = useMemo(() => (run ? boxOf(run) : null), [run]);
  if (!run || !box) return <p>No line of this garment crosses a seam.</p>;
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  const dot = Math.max(wide, high) / 45;
  return (
    <div className="seam-walk">
      <div className="row spread">
        <label className="field">
          <span className="label">Line</span>
          <select value={run.id} onChange={(e) => onRun(e.target.value)}>
            {runs.map((r) => (
              <option key={r.id} value={r.id}>
                {r.name}: {overWords(r)}
              </option>
            ))}
          </select>
        </label>
        <p className="verdict" role="status">
          {verdict(run)}
        </p>
      </div>
      <p className="small">
        <Amount mm={run.length} show={show} in={16} /> {run.closed ? 'all round' : 'from end to end'}, seam
        line on seam line. Turn by turn in the list.
      </p>
      <svg
        viewBox={`${box.minX} ${-box.maxY} ${wide} ${high}`}
        className="walk-picture"
        role="img"
        aria-label={`${run.name}: ${run.legs.map((l) => l.piece.name).join(', ')} edge to edge`}
      >
        <g transform="scale(1 -1)">
          {run.legs.map(({ piece, motion }, i) => (
            <g key={i} transform={motionMatrix(motion)}>
              <path className={`own rest ${piece.cloth}`} d={outlineD(piece)} />
            </g>
          ))}
          {run.legs.map((leg, i) => (
            <path key={i} className="run-line" d={pathD(legPath(leg))} />
          ))}
        </g>
        {run.joins.map((join, i) => (
          <g key={i} className="run-join" transform={`translate(${join.at.x} ${-join.at.y})`}>
            <circle r={dot} />
            <text y={dot * 0.38} style={{ fontSize: dot * 1.3 }} textAnchor="middle">
              {i + 1}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}

/** The crossings of the line that is shown, then all lines with the worst turn of each. */
export function RunPanel({ runs, run, show, onRun }: Props) {
  if (!run) return null;
  // The inside of the garment lies to the left of a line walked as drawn.
  const inwards = run.legs[0]!.forward ? 1 : -1;
  return (
    <>
      <table className="notch-table">
        <thead>
          <tr>
            <th scope="col">It crosses</th>
            <th scope="col">and there</th>
            <th scope="col" className="amount">
              from its start
            </th>
          </tr>
        </thead>
        <tbody>
          {run.joins.map((join, i) => (
            <tr key={i}>
              <th scope="row">
                {i + 1} {join.name}
              </th>
              <td>{turnWords(join.turn * inwards)}</td>
              <td className="amount">
                <Amount mm={lengthTo(run, i)} show={show} in={16} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <section className="stack tight">
        <h2>{runs.length === 1 ? 'One line' : `${runs.length} lines`} over seams</h2>
        <ul className="seams">
          {runs.map((r) => (
            <li key={r.id}>
              <button
                type="button"
                className="act quiet"
                aria-pressed={r === run}
                onClick={() => onRun(r.id)}
              >
                {r.name}: {overWords(r)}
              </button>
              <span className="small">{worstWords(r)}</span>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}

/** Which pieces a line runs over: their names, or how many when there are more than two. */
function overWords(run: RunThrough): string {
  const names = [...new Set(run.legs.map((l) => l.piece.name))];
  return names.length > 2 ? `${names.length} pieces` : names.join(', ');
}

const worst = (run: RunThrough) => run.joins.reduce((m, j) => (Math.abs(j.turn) > Math.abs(m.turn) ? j : m));

const worstWords = (run: RunThrough): string => {
  const { turn } = worst(run);
  return Math.abs(turn) < SMOOTH_DEG ? 'runs through' : `${Math.abs(turn).toFixed(0)}°`;
};

function verdict(run: RunThrough): string {
  const most = worst(run);
  return Math.abs(most.turn) < SMOOTH_DEG
    ? 'It runs straight through every seam.'
    : `Most at the ${most.name.toLowerCase()}: ${Math.abs(most.turn).toFixed(0)}°.`;
}

const lengthTo = (run: RunThrough, join: number): number =>
  run.legs.slice(0, join + 1).reduce((sum, l) => sum + pathLength(l.edge.path), 0);

function boxOf(run: RunThrough): Box {
  const box = boxAround(
    run.legs.flatMap(({ piece, motion }) =>
      piece.edges.map((e) => pathBox(e.path.map((p) => movePoint(p, motion)))),
    ),
  );
  return { minX: box.minX - 20, minY: box.minY - 20, maxX: box.maxX + 20, maxY: box.maxY + 20 };
}
