import { halfOf, hasEdge, leaders } from './role.ts';
import type { Garment } from './pattern.ts';
import type { DrawnPiece } from './piece.ts';
import type { EdgeRole, Half, PieceRole } from './role-table.ts';

/** The pieces that a garment is worn in, by what they are: round the trunk or the legs, and round the arms. */

/** Whether the piece is set into an armhole. */
export const isSleeve = (piece: DrawnPiece): boolean => hasEdge(piece, 'cap');
/** The sleeves, linings left out: they follow. */
export const sleeves = (garment: Garment): DrawnPiece[] => leaders(garment).filter(isSleeve);

/** Roles by which a piece is known to be worn round the trunk or the legs. */
const BODY: readonly EdgeRole[] = ['side', 'panel', 'shoulder', 'rise', 'inseam'];
/** Pieces of a half that are sewn on to those round the body, whatever edges they have. */
const SEWN_ON: readonly (PieceRole | undefined)[] = [
  'pocket',
  'pocket-bag',
  'flap',
  'fly-shield',
  'collar',
  'collar-stand',
  'lapel',
  'cuff',
  'waistband',
  'hem-band',
  'neckband',
  'facing',
  'strap',
  'tab',
];

/**
 * The pieces round the body of one half, from the centre to the side. Collars, cuffs, pockets and bands do not count: they have no seam
 * that runs up and down the body.
 */
export function panels(garment: Garment, half: Half): DrawnPiece[] {
  const found = leaders(garment).filter(
    (p) =>
      !isSleeve(p) &&
      halfOf(p) === half &&
      BODY.some((role) => hasEdge(p, role)) &&
      !SEWN_ON.includes(p.role),
  );
  const rank = (p: DrawnPiece): number =>
    hasEdge(p, 'centre') || hasEdge(p, 'rise') ? 0 : hasEdge(p, 'side') ? 2 : 1;
  return found.toSorted((a, b) => rank(a) - rank(b));
}
