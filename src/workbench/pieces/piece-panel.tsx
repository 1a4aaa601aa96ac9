import { cutWords, renderPhrase, tellIn } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { pathLength } from '../../geometry/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { Amount } from '../parts/amount.tsx';

interface Props {
  readonly bench: ReadyBench;
  readonly piece: DrawnPiece | null;
  readonly edge: string | null;
  readonly onEdge: (id: string) => void;
  readonly onChoose: (id: string) => void;
  readonly onWalk: (seam: string) => void;
}

/** The chosen piece with its edges and seams; without one, the list of pieces and of seams. */
export function PiecePanel({ bench, piece, edge, onEdge, onChoose, onWalk }: Props) {
  const { made, show } = bench;
  const seamOf = (id: string) =>
    made.seams.find((w) => [...w.seam.a, ...w.seam.b].some((r) => r.piece === piece?.id && r.edge === id));
  if (piece) {
    return (
      <section className="stack tight">
        <h2>
          {piece.number} {piece.name}
        </h2>
        <p className="small">{renderPhrase(cutWords(piece), tellIn(show))}</p>
        <table>
          <thead>
            <tr>
              <th scope="col">Edge</th>
              <th scope="col" className="amount">
                Length
              </th>
              <th scope="col">Seam</th>
            </tr>
          </thead>
          <tbody>
            {piece.edges.map((e) => {
              const walk = seamOf(e.id);
              return (
                <tr key={e.id} data-on={e.id === edge || undefined}>
                  <th scope="row">
                    <button
                      id={`edge-${e.id}`}
                      type="button"
                      className="act quiet"
                      aria-pressed={e.id === edge}
                      onClick={() => onEdge(e.id)}
                    >
                      {e.name}
                    </button>
                  </th>
                  <td className="amount">
                    <Amount mm={pathLength(e.path)} show={show} in={16} />
                  </td>
                  <td>
                    {walk ? (
                      <button
                        type="button"
                        className="act quiet"
                        aria-label={`Walk ${walk.seam.name}`}
                        onClick={() => onWalk(walk.seam.id)}
                      >
                        walk
                      </button>
                    ) : (
                      <small>{e.kind}</small>
                    )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
    );
  }
  return (
    <>
      <section className="stack tight">
        <h2>{made.garment.pieces.length} pieces</h2>
        <ul>
          {made.garment.pieces.map((p) => (
            <li key={p.id}>
              <button type="button" className="act quiet" onClick={() => onChoose(p.id)}>
                {p.number} {p.name}
              </button>
            </li>
          ))}
        </ul>
      </section>
      <SeamList bench={bench} seam={null} onWalk={onWalk} />
    </>
  );
}

/** All seams with what walking them comes to. */
export function SeamList({
  bench,
  seam,
  onWalk,
}: {
  bench: ReadyBench;
  seam: string | null;
  onWalk: (seam: string) => void;
}) {
  const { made, show } = bench;
  return (
    <section className="stack tight">
      <h2>
        {made.seams.length} {made.seams.length === 1 ? 'seam' : 'seams'}
      </h2>
      <ul className="seams">
        {made.seams.map((w) => (
          <li key={w.seam.id}>
            <button
              id={`seam-${w.seam.id}`}
              type="button"
              className="act quiet"
              aria-pressed={seam === w.seam.id}
              onClick={() => onWalk(w.seam.id)}
            >
              {w.seam.name}
            </button>
            <span className="small">
              {Math.abs(w.difference) < 0.5 ? (
                'walks true'
              ) : (
                <Amount mm={w.difference} show={show} signed in={16} />
              )}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
