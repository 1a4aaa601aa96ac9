import { hasRole } from '../../garment/index.ts';
import type { DrawnPiece, EdgeRef, EdgeRole, Garment } from '../../garment/index.ts';
import { replace } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { Refusal } from '../words/refusal.ts';
import { pieceOf, seamsOf } from '../role/roles.ts';
import { transferStrip } from '../move/transfer.ts';
import type { StripWidth } from '../move/transfer.ts';

/** The seams of a role between front and back, or a Refusal `no-<role>`. */
export function needSeams(garment: Garment, role: EdgeRole): ReturnType<typeof seamsOf> {
  const found = seamsOf(garment, role);
  if (found.length === 0) throw new Refusal(`no-${role}`, { role, on: 'between' });
  return found;
}

/** Whether a chain starts at the edge's neighbour of a role (a shoulder seam at the armhole). */
export function startsAt(garment: Garment, chain: readonly EdgeRef[], role: EdgeRole): boolean {
  const ref = chain[0]!;
  const piece = pieceOf(garment, ref.piece);
  const n = piece.edges.length;
  const i = piece.edges.findIndex((e) => e.id === ref.edge);
  const beside = piece.edges[ref.backwards ? (i + 1) % n : (i + n - 1) % n]!;
  return hasRole(beside, role);
}

/** Pieces that a chain runs over, each once. */
const piecesOf = (garment: Garment, chain: readonly EdgeRef[]): DrawnPiece[] =>
  [...new Set(chain.map((r) => r.piece))].map((id) => pieceOf(garment, id));

/** Moves a strip from front to back across a seam (negative: back to front); followers of both go along. */
export function moveStrip(
  change: Change,
  { front, back }: ReturnType<typeof seamsOf>[number],
  widths: readonly StripWidth[],
): void {
  const { garment } = change;
  const moved = transferStrip(
    { pieces: piecesOf(garment, front), chain: front },
    { pieces: piecesOf(garment, back), chain: back },
    widths,
  );
  for (const piece of [...moved.a, ...moved.b]) replace(change, piece);
}
