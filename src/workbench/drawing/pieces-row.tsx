import { middleSize } from '../../garment/index.ts';
import type { Pattern } from '../../garment/index.ts';
import { PieceFigure } from './piece-figure.tsx';

/** As many as stand beside one another on a card. */
const SHOWN = 4;

/** The first pieces of a pattern side by side, to know it by. Only looked at: its name stands beside it. */
export function PiecesRow({ pattern }: { pattern: Pattern }) {
  const mid = middleSize(pattern);
  return (
    <div className="row pieces-row" aria-hidden="true">
      {pattern.pieces
        .filter((p) => p.cloth === 'shell')
        .slice(0, SHOWN)
        .map((piece) => (
          <PieceFigure key={piece.id} piece={piece} size={mid} label="" />
        ))}
    </div>
  );
}
