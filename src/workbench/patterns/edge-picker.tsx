import { useMemo } from 'react';
import { levelName, pieceAtSize, type NestedPiece } from '../../garment/index.ts';
import { boxAround, pathAt, pathBox, type Box, type Point } from '../../geometry/index.ts';
import { outlineD, pathD } from '../drawing/path-d.ts';
import { LevelHand } from './level-hand.tsx';

/** A piece drawn large; every edge can be pointed at, or reached with the keyboard. */
export function EdgePicker(props: {
  piece: NestedPiece;
  size: number;
  edge: string | null;
  onEdge: (id: string) => void;
  show: 'in' | 'cm';
  onMoveLevel: (level: string, mm: number) => void;
}) {
  const { piece, edge, onEdge } = props;
  const drawn = useMemo(() => pieceAtSize(piece, props.size), [piece, props.size]);
  const box = boxAround(piece.edges.flatMap((e) => e.path.map(pathBox)));
  const room = Math.max(box.maxX - box.minX, box.maxY - box.minY) * 0.07 + 12;
  const [w, h] = [box.maxX - box.minX + 2 * room, box.maxY - box.minY + 2 * room];
  return (
    <svg
      className="edge-picker"
      viewBox={`${box.minX - room} ${-box.maxY - room} ${w} ${h}`}
      role="group"
      aria-label={`${piece.name}: edges`}
    >
      <g transform="scale(1 -1)">
        <path className="nest" d={piece.edges.flatMap((e) => e.path.map(pathD)).join('')} />
        <path className={`own ${piece.cloth}`} d={outlineD(drawn)} />
        {drawn.lines
          .filter((l) => l.kind !== 'level')
          .map((l) => (
            <path key={l.id} className={`line ${l.kind}`} d={pathD(l.path)} />
          ))}
      </g>
      {drawn.edges
        .filter((e, i) => (e.kind === 'dart') === (drawn.edges.at(i - 1)!.kind === 'dart'))
        .map((e) => (
          <text
            key={e.id}
            className="corner-level"
            {...cornerPlace(e.path[0]!, box)}
            fontSize={Math.max(w, h) / 45}
          >
            {levelName(e.from)}
          </text>
        ))}
      {drawn.lines
        .filter((l) => l.kind === 'level')
        .map((l) => (
          <LevelHand
            key={l.id}
            line={l}
            show={props.show}
            size={Math.max(w, h) / 36}
            reach={[box.minY, box.maxY]}
            onMove={(mm) => props.onMoveLevel(l.level!, mm)}
          />
        ))}
      {drawn.edges.map((e) => {
        const mid = pathAt(e.path, 0.5);
        const d = pathD(e.path);
        return (
          <g
            key={e.id}
            role="button"
            tabIndex={0}
            aria-pressed={e.id === edge}
            aria-label={`${e.name}, ${e.kind}`}
            className="edge"
            onClick={() => onEdge(e.id)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' && event.key !== ' ') return;
              event.preventDefault();
              onEdge(e.id);
            }}
          >
            <g transform="scale(1 -1)">
              <path className="grasp" d={d} />
              <path className="shown" d={d} />
            </g>
            {e.id === edge && (
              <text x={mid.x} y={-mid.y} fontSize={Math.max(w, h) / 26} textAnchor="middle">
                {e.name}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}

/** The level of a corner is written outside the piece, beside the corner. */
function cornerPlace({ x, y }: Point, box: Box): { x: number; y: number; textAnchor: 'start' | 'end' } {
  const right = x > (box.minX + box.maxX) / 2;
  const below = y < (box.minY + box.maxY) / 2;
  const off = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 60;
  return {
    x: x + (right ? -off : off),
    y: -y + (below ? 2.4 * off : -off),
    textAnchor: right ? 'end' : 'start',
  };
}
