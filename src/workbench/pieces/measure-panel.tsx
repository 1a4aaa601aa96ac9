import { useState } from 'react';
import { levelName, pieceAt } from '../../garment/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';
import { distance, lengthAtPlace, pathLength, type Point } from '../../geometry/index.ts';
import type { ReadyBench } from '../station/bench.ts';
import { Amount } from '../parts/amount.tsx';
import type { Tape } from './measure-marks.tsx';

interface Props {
  readonly bench: ReadyBench;
  readonly tape: Tape;
  readonly piece: DrawnPiece | null;
  readonly onClear: () => void;
  readonly onChoose: (id: string) => void;
}

/** What the tape reads: between two places, along an edge, round the garment across its pieces; and the same by keyboard. */
export function MeasurePanel({ bench, tape, piece, onClear, onChoose }: Props) {
  const { made, show } = bench;
  const [a, b] = tape;
  const along = a && b ? alongEdge(made.garment.pieces, tape) : null;
  return (
    <>
      <section className="stack tight" aria-live="polite">
        <h2>Between two places</h2>
        {!a && <p className="small">Point at the first place on the table.</p>}
        {a && !b && <p>Now the second place.</p>}
        {a && b && (
          <dl className="sum">
            <div>
              <dt>straight</dt>
              <dd>
                <Amount mm={distance(a.at, b.at)} show={show} in={16} />
              </dd>
            </div>
            {along !== null && (
              <div>
                <dt>along the edge</dt>
                <dd>
                  <Amount mm={along} show={show} in={16} />
                </dd>
              </div>
            )}
          </dl>
        )}
        {a && (
          <button type="button" className="act" onClick={onClear}>
            Take the tape off
          </button>
        )}
      </section>
      <CornerToCorner bench={bench} piece={piece ?? made.garment.pieces[0]!} onChoose={onChoose} />
      <section className="stack tight">
        <h2>Round the garment</h2>
        <table>
          <tbody>
            {made.girths.map((g) => (
              <tr key={g.level}>
                <th scope="row">
                  {levelName(g.level, bench.fitting.body.wearer)}
                  <br />
                  <small>
                    {g.parts
                      .map((p) => `${p.times} × ${pieceAt(made.garment, p.piece)?.name ?? p.piece}`)
                      .join(' + ')}
                  </small>
                </th>
                <td className="amount">
                  {g.girth === null ? 'not to be measured' : <Amount mm={g.girth} show={show} in={16} />}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}

/** Corner to corner and every edge of one piece, for hands on the keyboard. */
function CornerToCorner({
  bench,
  piece,
  onChoose,
}: {
  bench: ReadyBench;
  piece: DrawnPiece;
  onChoose: (id: string) => void;
}) {
  const { show, made } = bench;
  const [from, setFrom] = useState(0);
  const [to, setTo] = useState(1);
  const corners = piece.edges.map((e, i) => ({
    at: e.path[0]!,
    name: `${piece.edges.at(i - 1)!.name} / ${e.name}`,
  }));
  const point = (i: number): Point => corners[Math.min(i, corners.length - 1)]!.at;
  return (
    <section className="stack tight">
      <h2>On one piece</h2>
      <label className="field">
        <span className="label">Piece</span>
        <select value={piece.id} onChange={(e) => onChoose(e.target.value)}>
          {made.garment.pieces.map((p) => (
            <option key={p.id} value={p.id}>
              {p.number} {p.name}
            </option>
          ))}
        </select>
      </label>
      <div className="row about">
        {[
          { label: 'From the corner', value: from, set: setFrom },
          { label: 'to the corner', value: to, set: setTo },
        ].map((f) => (
          <label key={f.label} className="field">
            <span className="label">{f.label}</span>
            <select
              value={Math.min(f.value, corners.length - 1)}
              onChange={(e) => f.set(Number(e.target.value))}
            >
              {corners.map((c, i) => (
                <option key={i} value={i}>
                  {c.name}
                </option>
              ))}
            </select>
          </label>
        ))}
      </div>
      <p>
        <Amount mm={distance(point(from), point(to))} show={show} in={16} /> straight
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Edge</th>
            <th scope="col" className="amount">
              Length
            </th>
          </tr>
        </thead>
        <tbody>
          {piece.edges.map((e) => (
            <tr key={e.id}>
              <th scope="row">{e.name}</th>
              <td className="amount">
                <Amount mm={pathLength(e.path)} show={show} in={16} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Along the edge, when both places lie on the same one; the end of an edge is the next one's first corner. */
function alongEdge(pieces: readonly DrawnPiece[], tape: Tape): number | null {
  const [a, b] = tape;
  if (!a?.place || !b?.place || a.piece !== b.piece) return null;
  const piece = pieces.find((p) => p.id === a.piece);
  if (!piece) return null;
  const index = (id: string | undefined): number => piece.edges.findIndex((e) => e.id === id);
  const start = a.place.cubic === 0 && a.place.t === 0;
  const end = b.place.cubic === 0 && b.place.t === 0;
  const [i, j] = [index(a.edge), index(b.edge)];
  const at = (edge: number, t: Tape[number]): number => lengthAtPlace(piece.edges[edge]!.path, t.place!);
  if (i === j) return Math.abs(at(i, a) - at(j, b));
  const n = piece.edges.length;
  if (end && (i + 1) % n === j) return pathLength(piece.edges[i]!.path) - at(i, a);
  if (start && (j + 1) % n === i) return pathLength(piece.edges[j]!.path) - at(j, b);
  return null;
}
