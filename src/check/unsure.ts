import type { EdgeId, EdgeRole, Finding, Half, PieceHalf, PieceId, PieceRole } from '../garment/index.ts';
import { checkFinding } from './words-table.ts';

interface Unsure {
  readonly id: PieceId;
  readonly name: string;
  readonly role?: PieceRole;
  readonly half?: PieceHalf;
  readonly unsure?: true;
  readonly edges: readonly {
    readonly id: EdgeId;
    readonly name: string;
    readonly role?: EdgeRole;
    readonly half?: Half;
    readonly unsure?: true;
  }[];
}

/**
 * What was read from a drawing without being sure of it, and nobody has said since. The edges of a piece in doubt wait until it is known.
 * Findings: `piece-unsure`, `edge-unsure`.
 */
export const checkRoles = (pieces: readonly Unsure[]): Finding[] =>
  pieces.flatMap((piece) =>
    piece.unsure
      ? [
          checkFinding(
            'piece-unsure',
            'warning',
            { piece: piece.id },
            { piece: piece.name, role: piece.role ?? null, half: piece.half ?? null },
          ),
        ]
      : piece.edges
          .filter((edge) => edge.unsure)
          .map((edge) =>
            checkFinding(
              'edge-unsure',
              'warning',
              { piece: piece.id, edge: edge.id },
              { piece: piece.name, edge: edge.name, role: edge.role ?? null, half: edge.half ?? null },
            ),
          ),
  );
