import { useMemo, useState } from 'react';
import { levelName, middleSize, pieceAt } from '../../garment/index.ts';
import type { NestedPiece, Pattern } from '../../garment/index.ts';
import { moveLevel } from '../../desk/index.ts';
import { PieceFigure } from '../drawing/piece-figure.tsx';
import { EdgePicker } from './edge-picker.tsx';
import type { ChangePattern } from './change-pattern.ts';
import { PieceFacts } from './piece-facts.tsx';
import { LevelList } from './level-list.tsx';
import { SeamList } from './seam-list.tsx';
import { StillInDoubt } from './still-in-doubt.tsx';

/** Pieces, edges, seams and followers, set by pointing: choose a piece, point at its edges, point at what they are sewn to. */
export function PatternPieces({
  pattern,
  change,
  show,
}: {
  pattern: Pattern;
  change: ChangePattern;
  show: 'in' | 'cm';
}) {
  const [chosen, setChosen] = useState(pattern.pieces[0]!.id);
  const [edge, setEdge] = useState<string | null>(null);
  const [joining, setJoining] = useState<{ piece: string; edge: string } | null>(null);
  const mid = middleSize(pattern);
  const piece = useMemo(() => pieceAt(pattern, chosen) ?? pattern.pieces[0]!, [pattern, chosen]);
  const choose = (p: NestedPiece): void => {
    setChosen(p.id);
    setEdge(null);
  };
  return (
    <section className="sheet stack" aria-labelledby="pieces-head">
      <h2 id="pieces-head">Pieces and how they join</h2>
      <p className="small">
        Choose a piece, then point at an edge of it: say what it is, at which level it begins, and what it is
        sewn to. Corners carry the level whose size they take.
      </p>
      <StillInDoubt
        pattern={pattern}
        change={change}
        show={show}
        onShow={(id, at) => {
          setChosen(id);
          setEdge(at);
        }}
      />
      <div className="piece-strip" role="group" aria-label="Pieces">
        {pattern.pieces.map((p) => (
          <button
            key={p.id}
            type="button"
            className="act piece-button"
            aria-pressed={p.id === piece.id}
            onClick={() => choose(p)}
          >
            <PieceFigure piece={p} size={mid} label="" />
            <span>
              {p.number} {p.name}
              {p.cloth !== 'shell' && <small> {p.cloth}</small>}
            </span>
          </button>
        ))}
      </div>
      <div className="piece-editor">
        <EdgePicker
          piece={piece}
          size={mid}
          edge={edge}
          onEdge={setEdge}
          show={show}
          onMoveLevel={(level, mm) =>
            change(
              (p) => moveLevel(p, piece.id, level, mm),
              `Moved the ${levelName(level, pattern.wearer)} line of ${piece.name}`,
              `level/${piece.id}/${level}`,
            )
          }
        />
        <PieceFacts
          pattern={pattern}
          piece={piece}
          edge={edge}
          onEdge={setEdge}
          change={change}
          show={show}
          joining={joining}
          onJoining={setJoining}
        />
      </div>
      <LevelList pattern={pattern} piece={piece} change={change} show={show} />
      <SeamList pattern={pattern} change={change} />
    </section>
  );
}
