import { useEffect, useRef } from 'react';
import {
  LEVELS,
  levelName,
  renderPhrase,
  tellIn,
  type NestedPiece,
  type Pattern,
} from '../../garment/index.ts';
import { levelReason } from '../../exchange/index.ts';
import { boxAround, pathBox } from '../../geometry/index.ts';
import { agreeLevel, dropLevel, proposeAgain, putLevel } from '../../desk/index.ts';
import { useRoute } from '../station/route.ts';
import type { ChangePattern } from './change-pattern.ts';

/** The levels that run on a piece: whether they were drawn or are proposed and by what; taken away, or drawn where there is none. */
export function LevelList({
  pattern,
  piece,
  change,
  show,
}: {
  pattern: Pattern;
  piece: NestedPiece;
  change: ChangePattern;
  show: 'in' | 'cm';
}) {
  const route = useRoute();
  const place = useRef<HTMLDivElement>(null);
  const wanted = route.at === 'patterns' && route.look === 'levels';
  useEffect(() => {
    if (wanted) place.current?.scrollIntoView({ block: 'center' });
  }, [wanted]);
  const lines = piece.lines.filter((line) => line.kind === 'level' && line.level !== undefined);
  const free = LEVELS.filter(({ level }) => lines.every((line) => line.level !== level));
  const none = pattern.pieces.every((one) => one.lines.every((line) => line.kind !== 'level'));
  const middle = (k: number): number => {
    const box = boxAround(piece.edges.map((edge) => pathBox(edge.path[k]!)));
    return (box.minY + box.maxY) / 2;
  };
  return (
    <div className="stack tight level-list" ref={place}>
      <h3>Levels on {piece.name}</h3>
      <p className="small">
        A girth is measured along each of these lines, and a size is chosen for each. Take hold of a line to
        move it, or choose it and press the arrow keys. Dashed lines are proposed.
      </p>
      <ul className="stack tight">
        {lines.map((line) => {
          const name = levelName(line.level!, pattern.wearer);
          return (
            <li key={line.id} className="row">
              <strong>{name}</strong>
              {line.proposed && (
                <span>proposed {renderPhrase(levelReason(line.proposed, null), tellIn(show))}</span>
              )}
              {line.proposed && (
                <button
                  type="button"
                  className="act"
                  onClick={() => change((p) => agreeLevel(p, line.level!), `The ${name} line is right`)}
                >
                  The {name} line is right
                </button>
              )}
              <button
                type="button"
                className="act quiet"
                onClick={() =>
                  change(
                    (p) => dropLevel(p, piece.id, line.level!),
                    `Took away the ${name} line of ${piece.name}`,
                  )
                }
              >
                Take away the {name} line
              </button>
            </li>
          );
        })}
      </ul>
      <div className="row">
        <label className="row small">
          Draw a level
          <select
            value=""
            onChange={(e) => {
              const level = e.target.value;
              change(
                (p) => putLevel(p, piece.id, level, [...piece.edges[0]!.path.keys()].map(middle)),
                `Drew the ${levelName(level, pattern.wearer)} line on ${piece.name}`,
              );
            }}
          >
            <option value="">choose …</option>
            {free.map(({ level }) => (
              <option key={level} value={level}>
                {levelName(level, pattern.wearer)}
              </option>
            ))}
          </select>
        </label>
        {none && (
          <button
            type="button"
            className="act main"
            onClick={() => change(proposeAgain, 'Proposed the levels')}
          >
            Propose levels for all pieces
          </button>
        )}
      </div>
    </div>
  );
}
