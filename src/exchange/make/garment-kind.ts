import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import type { EdgeRole, GarmentKind } from '../../garment/index.ts';
import type { Asked } from '../find/ask.ts';
import type { Evidence, Proposal, ProposedPiece } from '../find/proposal.ts';

/** A kind of garment with why it is thought so. */
export type GarmentGuess = Asked<GarmentKind> & { readonly offered: GarmentKind };

/** What kind of garment the pieces make, by what they are: the best guess, for a person to say otherwise. A whole pattern of ours says it itself. */
export function guessGarment({ pieces, whole }: Pick<Proposal, 'pieces' | 'whole'>): GarmentGuess {
  if (whole) return { offered: whole.garment, evidence: SAY['whole-in-file']() };
  const shell = pieces.filter((piece) => piece.cloth === 'shell');
  const has = (piece: ProposedPiece, ...roles: EdgeRole[]) =>
    roles.some((role) => piece.edges.some((edge) => edge.role === role));
  const onBody = shell.filter((piece) => piece.half === 'front' || piece.half === 'back');
  const legs = shell.find((piece) => has(piece, 'inseam', 'outseam'));
  if (legs) return guess('trousers', legs, 'inseam', 'outseam');
  const trunk = onBody.filter((piece) => has(piece, 'armhole', 'neck', 'shoulder'));
  const skirt = onBody.find(
    (piece) => !trunk.includes(piece) && has(piece, 'waist') && has(piece, 'side', 'panel'),
  );
  if (skirt) return guess(trunk.length > 0 ? 'dress' : 'skirt', skirt, 'waist');
  const tailored = shell.find((piece) => piece.role === 'lapel' || piece.role === 'upper-sleeve');
  if (tailored) return because('jacket', SAY['is-of-jacket']({ piece: tailored.name }));
  const yoke = shell.find((piece) => piece.role === 'yoke' && has(piece, 'neck'));
  if (yoke) return guess('smock', yoke, 'neck');
  const long = trunk.find(isLong);
  if (long) return because('dress', SAY['is-long']({ piece: long.name, over: DRESS_MM }));
  const panel = onBody.find((piece) => piece.role === 'side-front' || piece.role === 'side-back');
  if (panel) return because('bodice', SAY['is-side-panel']({ piece: panel.name }));
  const waisted = trunk.find((piece) => has(piece, 'waist'));
  if (waisted) return guess('bodice', waisted, 'waist');
  return trunk[0]
    ? guess('top', trunk[0], 'armhole', 'neck', 'shoulder')
    : because('top', SAY['kind-unsaid']());
}

const because = (offered: GarmentKind, evidence: Evidence): GarmentGuess => ({ offered, evidence });

/** By an edge of a role that the piece has. */
function guess(offered: GarmentKind, piece: ProposedPiece, ...roles: EdgeRole[]): GarmentGuess {
  const edge = piece.edges.find(({ role }) => role && roles.includes(role));
  return because(offered, SAY['has-edge']({ piece: piece.name, role: edge?.role ?? roles[0]! }));
}

/** Longer than this from shoulder to hem it is a dress, mm; in the middle size. */
const DRESS_MM = 800;

const isLong = ({ box }: ProposedPiece): boolean =>
  Math.max(box.maxX - box.minX, box.maxY - box.minY) > DRESS_MM;
