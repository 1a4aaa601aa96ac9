import { middleOf, renderPhrase } from '../../garment/index.ts';
import type { PieceCorrection } from '../../exchange/index.ts';
import { boxAround, pathBox } from '../../geometry/index.ts';
import { pathD } from '../drawing/path-d.ts';
import { pageTell } from '../station/page-tell.ts';
import { FoundRoles } from './found-roles.tsx';
import type { FoundPiece } from './read-worker.ts';

/** One proposed piece in all its sizes, with why it was taken for one; to be named, left out or turned over. */
export function FoundCard({
  piece,
  said,
  onSay,
}: {
  piece: FoundPiece;
  said: PieceCorrection;
  onSay: (part: PieceCorrection) => void;
}) {
  const box = boxAround(piece.paths.flatMap((size) => size.map(pathBox)));
  return (
    <li className="card plain">
      <svg
        className="piece-figure"
        viewBox={`${box.minX - 8} ${-box.maxY - 8} ${box.maxX - box.minX + 16} ${box.maxY - box.minY + 16}`}
        role="img"
        aria-label={`${piece.name}, all sizes`}
      >
        <g transform="scale(1 -1)">
          <path className="nest" d={piece.paths.flatMap((size) => size.map(pathD)).join('')} />
          <path className="own" d={piece.paths[middleOf(piece.paths.length)]!.map(pathD).join('')} />
        </g>
      </svg>
      <label className="field">
        <span className="label">Piece</span>
        <input
          type="text"
          value={said.name ?? piece.name}
          onChange={(e) => onSay({ name: e.target.value })}
        />
      </label>
      <label className="tick">
        <input
          type="checkbox"
          checked={said.leaveOut ?? false}
          onChange={(e) => onSay({ leaveOut: e.target.checked })}
        />{' '}
        not wanted: bring the pattern in without it
      </label>
      <label className="tick">
        <input
          type="checkbox"
          checked={said.mirror ?? false}
          onChange={(e) => onSay({ mirror: e.target.checked })}
        />{' '}
        turn it over
      </label>
      <p className="small">{renderPhrase(piece.evidence, pageTell())}</p>
      <FoundRoles piece={piece} said={said} onSay={onSay} />
    </li>
  );
}
