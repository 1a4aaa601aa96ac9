import { pieceAtSize, type DrawnPiece, type NestedPiece } from '../../garment/index.ts';
import { boxAround, pathBox } from '../../geometry/index.ts';
import { outlineD, pathD } from './path-d.ts';

/** One piece as a small picture: its sizes faint, one line strong. */
export function PieceFigure({
  piece,
  own,
  size,
  label,
}: {
  piece: NestedPiece;
  own?: DrawnPiece;
  size: number;
  label: string;
}) {
  const strong = own ?? pieceAtSize(piece, size);
  const box = boxAround([
    ...piece.edges.flatMap((e) => e.path.map(pathBox)),
    ...strong.edges.map((e) => pathBox(e.path)),
  ]);
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
  return (
    <svg
      className="piece-figure"
      viewBox={`${box.minX - 8} ${-box.maxY - 8} ${w + 16} ${h + 16}`}
      {...(label ? { role: 'img', 'aria-label': label } : { 'aria-hidden': true })}
    >
      <g transform="scale(1 -1)">
        <path className="nest" d={piece.edges.flatMap((e) => e.path.map(pathD)).join('')} />
        <path className={`own ${piece.cloth}`} d={outlineD(strong)} />
        {strong.lines
          .filter((l) => l.kind === 'grain')
          .map((l) => (
            <path key={l.id} className="grain" d={pathD(l.path)} />
          ))}
      </g>
    </svg>
  );
}
