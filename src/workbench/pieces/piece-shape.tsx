import { memo, useState } from 'react';
import { cutWords, isOpen, renderPhrase } from '../../garment/index.ts';
import { notchTeeth } from '../../cut/index.ts';
import type { DrawnPiece, Finding, Pattern, Tell } from '../../garment/index.ts';
import { add, pathLength, scale } from '../../geometry/index.ts';
import { outlineD, pathD } from '../drawing/path-d.ts';
import { amountText } from '../parts/amount.tsx';
import type { Slot } from '../table/arrange.ts';
import { labelPlace } from './label-place.ts';

const NOTCH_MM = 7;

/** Notches of a piece as short strokes into it, one, two or three beside one another. */
function notchD(piece: DrawnPiece): string {
  let d = '';
  for (const edge of piece.edges) {
    for (const notch of edge.notches) {
      for (const { foot, inward } of notchTeeth(edge.path, notch.at, notch.count)) {
        const tip = add(foot, scale(inward, NOTCH_MM));
        d += `M${foot.x.toFixed(1)} ${foot.y.toFixed(1)}L${tip.x.toFixed(1)} ${tip.y.toFixed(1)}`;
      }
    }
  }
  return d;
}

/** Lines nearer than this to the new ones are not drawn again as “before”: two lines on one another hide both. mm. */
const SAME_LINE_MM = 0.4;

/** The edges that ran elsewhere before. */
function beforeD(before: DrawnPiece, now: DrawnPiece): string {
  return before.edges
    .filter((e, i) => {
      const path = now.edges[i]?.path;
      return (
        !path ||
        path.length !== e.path.length ||
        path.some((p, k) => Math.hypot(p.x - e.path[k]!.x, p.y - e.path[k]!.y) > SAME_LINE_MM)
      );
    })
    .map((e) => pathD(e.path))
    .join('');
}

/** What a screen reader says of a piece. */
export function pieceWords(piece: DrawnPiece, findings: readonly Finding[], tell: Tell): string {
  const open = findings.filter((f) => f.where.piece === piece.id && isOpen(f)).length;
  return `${piece.number} ${piece.name}. ${renderPhrase(cutWords(piece), tell)}${open ? `, ${open} to settle` : ''}`;
}

interface Props {
  readonly piece: DrawnPiece;
  readonly before: DrawnPiece | undefined;
  readonly slot: Slot;
  readonly chosen: boolean;
  readonly words: string;
  readonly onChoose: (id: string) => void;
}

/** One piece on the table: the person's own line, the line before the alterations, its inner lines and marks. */
export const PieceShape = memo(function PieceShape({ piece, before, slot, chosen, words, onChoose }: Props) {
  const name = `${piece.number} ${piece.name}`;
  // Set once: a name that wanders while its piece is altered draws the eye from the line.
  const [place] = useState(() => labelPlace(piece, name.length));
  return (
    <g
      transform={`translate(${slot.dx} ${-slot.dy})`}
      role="button"
      tabIndex={0}
      aria-label={words}
      aria-pressed={chosen}
      data-piece={piece.id}
      className={`piece ${chosen ? 'chosen' : ''}`}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        onChoose(piece.id);
      }}
    >
      <g transform="scale(1 -1)">
        <path className={`own ${piece.cloth}`} d={outlineD(piece)} />
        {before && before !== piece && <path className="before" d={beforeD(before, piece)} />}
        {piece.lines.map((l) => (
          <path
            key={l.id}
            className={`line ${l.kind}`}
            d={pathD(l.path)}
            markerStart={l.kind === 'grain' ? 'url(#grain-end)' : undefined}
            markerEnd={l.kind === 'grain' ? 'url(#grain-end)' : undefined}
          />
        ))}
        <path className="notch" d={notchD(piece)} />
        {piece.marks.map((m) => (
          <path key={m.id} className="mark" d={`M${m.at.x - 4} ${m.at.y}h8M${m.at.x} ${m.at.y - 4}v8`} />
        ))}
      </g>
      <g style={{ '--fit': place.fit } as React.CSSProperties}>
        <text
          x={place.at.x}
          y={-place.at.y}
          textAnchor="middle"
          dominantBaseline="central"
          transform={place.upright ? `rotate(-90 ${place.at.x} ${-place.at.y})` : undefined}
        >
          {name}
        </text>
        <text className="short" x={place.at.x} y={-place.at.y} textAnchor="middle" dominantBaseline="central">
          {piece.number}
        </text>
      </g>
    </g>
  );
});

interface EdgesProps {
  readonly piece: DrawnPiece;
  readonly pattern: Pattern;
  readonly slot: Slot;
  readonly show: 'in' | 'cm';
  readonly edge: string | null;
  readonly onEdge: (id: string) => void;
}

/** The edges of the chosen piece, each to be pointed at or reached by Tab, each named with its length and what it is sewn to. */
export const PieceEdges = memo(function PieceEdges({ piece, pattern, slot, show, edge, onEdge }: EdgesProps) {
  return (
    <g transform={`translate(${slot.dx} ${-slot.dy}) scale(1 -1)`}>
      {piece.edges.map((e) => {
        const seam = pattern.seams.find((s) =>
          [...s.a, ...s.b].some((r) => r.piece === piece.id && r.edge === e.id),
        );
        const words = `${e.name}, ${e.kind}, ${amountText(pathLength(e.path), show)}${seam ? `, seam ${seam.name}` : ''}`;
        return (
          <g
            key={e.id}
            className="edge"
            role="button"
            tabIndex={0}
            data-edge={e.id}
            aria-label={words}
            aria-pressed={e.id === edge}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' && event.key !== ' ') return;
              event.preventDefault();
              onEdge(e.id);
            }}
          >
            <path className="grasp" d={pathD(e.path)} />
            <path className="shown" d={pathD(e.path)} />
          </g>
        );
      })}
    </g>
  );
});
