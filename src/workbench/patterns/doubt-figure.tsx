import type { Body } from '../../garment/index.ts';
import { pathAt, pathEnd, pathStart } from '../../geometry/index.ts';
import type { BodyShape } from '../drawing/body-shape.ts';
import { Figure } from '../drawing/figure.tsx';
import { closedD, pathD } from '../drawing/path-d.ts';
import type { Doubt } from './doubts.ts';
import type { FoundPiece } from './read-worker.ts';
import { wornPlace } from './worn-place.ts';

/** Nobody in particular: a figure of mean measures. */
const somebody = (wearer: Body['wearer']): Body => ({
  id: 'somebody',
  name: '',
  wearer,
  show: 'cm',
  waist: 'unsaid',
  readings: {},
});
/** Shown round the piece, mm. */
const ROOM = 140;
/** A figure is shown at least so wide for its height. */
const FIGURE_WIDE = 0.52;

/** The piece in doubt where it is thought to be worn; the edge asked about drawn heavily, with a dot at each end and a question mark on it. */
export function DoubtFigure(props: { doubt: Doubt; piece: FoundPiece; wearer: Body['wearer'] }) {
  const { doubt, piece, wearer } = props;
  const edge = piece.edges.find(({ id }) => id === doubt.edge);
  const behind = piece.found.half === 'back';
  const place = (shape: BodyShape) => wornPlace(piece, shape);
  const over = (shape: BodyShape) => {
    const { dx, dy } = place(shape);
    const outline = closedD(piece.edges.map(({ worn }) => worn));
    const asked = edge ? pathD(edge.worn) : outline;
    const mid = pathAt((edge ?? piece.edges[0]!).worn, 0.5);
    return (
      <>
        <g transform={`translate(${dx} ${dy}) scale(1 -1)`} className="doubted">
          <path className="worn" d={outline} />
          <path className="asked casing" d={asked} />
          <path className="asked" d={asked} />
          {edge &&
            [pathStart(edge.worn), pathEnd(edge.worn)].map(({ x, y }, i) => (
              <circle key={i} className="asked-end" cx={x} cy={y} r={9} />
            ))}
        </g>
        {edge && (
          <g className="asked-mark" transform={`translate(${mid.x + dx} ${dy - mid.y})`}>
            <circle r={24} />
            <text textAnchor="middle" y={12}>
              ?
            </text>
          </g>
        )}
      </>
    );
  };
  return (
    <figure className="doubt-figure">
      <Figure
        body={somebody(wearer)}
        label={`“${piece.name}” laid where it is thought to be worn${behind ? ', seen from behind' : ''}${edge ? '; the edge asked about is marked' : ''}`}
        over={over}
        crop={(shape) => {
          const { top, bottom, left, right } = place(shape);
          const high = Math.max(bottom - top + 2 * ROOM, (2 * Math.max(-left, right)) / FIGURE_WIDE);
          const from = Math.max(-30, (top + bottom - high) / 2);
          return { from, to: from + high };
        }}
      />
      <figcaption className="small">{behind ? 'Seen from behind' : 'Seen from the front'}</figcaption>
    </figure>
  );
}
