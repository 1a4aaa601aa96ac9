import { EDGE_NAMES, PIECE_NAMES, renderPhrase, type EdgeRole, type PieceRole } from '../../garment/index.ts';
import type { PieceCorrection } from '../../exchange/index.ts';
import { pageTell } from '../station/page-tell.ts';
import { RolePick } from './role-pick.tsx';
import type { FoundPiece } from './read-worker.ts';

/** What a piece and its edges were taken for, shortly, each with its reason and to be changed. */
export function FoundRoles(props: {
  piece: FoundPiece;
  said: PieceCorrection;
  onSay: (part: PieceCorrection) => void;
}) {
  const { piece, said, onSay } = props;
  const edges = piece.edges.filter(({ kind }) => kind !== 'dart');
  const known = [...new Set(edges.flatMap(({ found }) => (found.role ? [EDGE_NAMES[found.role]] : [])))];
  const edgeSaid = (id: string, role: EdgeRole): void =>
    onSay({ edges: { ...said.edges, [id]: { ...said.edges?.[id], role, open: false } } });
  return (
    <details className="found-roles">
      <summary>
        <span>
          {said.open || !piece.found.role
            ? 'Not known what it is'
            : `Taken for: ${PIECE_NAMES[piece.found.role]}`}
          {known.length > 0 && <small> with {known.join(', ')}</small>}
        </span>
      </summary>
      <RolePick<PieceRole>
        label="What it is"
        role={said.open ? undefined : piece.found.role}
        names={PIECE_NAMES}
        onRole={(role) => onSay({ role, open: false })}
      />
      {piece.found.because && <p className="small">{renderPhrase(piece.found.because, pageTell())}</p>}
      <ul className="stack tight">
        {edges.map(({ id, name, found }) => (
          <li key={id}>
            <RolePick<EdgeRole>
              label={name}
              role={said.edges?.[id]?.open ? undefined : found.role}
              names={EDGE_NAMES}
              onRole={(role) => edgeSaid(id, role)}
            />
            {found.because && <small>{renderPhrase(found.because, pageTell())}</small>}
          </li>
        ))}
      </ul>
    </details>
  );
}
