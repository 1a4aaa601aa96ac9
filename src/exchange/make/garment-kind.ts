import type { EdgeRole, GarmentKind } from '../../garment/index.ts';
import type { ProposedPiece } from '../find/proposal.ts';

/** What kind of garment the pieces make, by what they are: the best guess, for a person to say otherwise. */
export function kindByRoles(pieces: readonly ProposedPiece[]): GarmentKind {
  const shell = pieces.filter((piece) => piece.cloth === 'shell');
  const has = (piece: ProposedPiece, ...roles: EdgeRole[]) =>
    roles.some((role) => piece.edges.some((edge) => edge.role === role));
  const onBody = shell.filter((piece) => piece.half === 'front' || piece.half === 'back');
  if (shell.some((piece) => has(piece, 'inseam', 'outseam'))) return 'trousers';
  const trunk = onBody.filter((piece) => has(piece, 'armhole', 'neck', 'shoulder'));
  const skirt = onBody.some(
    (piece) => !trunk.includes(piece) && has(piece, 'waist') && has(piece, 'side', 'panel'),
  );
  if (skirt) return trunk.length > 0 ? 'dress' : 'skirt';
  if (shell.some((piece) => piece.role === 'lapel' || piece.role === 'upper-sleeve')) return 'jacket';
  if (shell.some((piece) => piece.role === 'yoke' && has(piece, 'neck'))) return 'smock';
  const panels = onBody.some((piece) => piece.role === 'side-front' || piece.role === 'side-back');
  if (isLong(trunk)) return 'dress';
  return panels || trunk.some((piece) => has(piece, 'waist')) ? 'bodice' : 'top';
}

/** Longer than this from shoulder to hem it is a dress, mm; in the middle size. */
const DRESS_MM = 800;

const isLong = (pieces: readonly ProposedPiece[]): boolean =>
  pieces.some(({ box }) => Math.max(box.maxX - box.minX, box.maxY - box.minY) > DRESS_MM);
