import { middleOf } from '../../../garment/index.ts';
import type { EdgeRef, Half, SignRole } from '../../../garment/index.ts';
import { EVIDENCE_WORDS as SAY } from '../../words/evidence-table.ts';
import { capHalves, crownNotches, crowns } from '../cap.ts';
import type { Evidence, ProposedEdge, ProposedNotch, ProposedPiece, ProposedSeam } from '../proposal.ts';

/** Teeth of a balance notch: one in front, two behind (*common practice*). */
const TEETH: Readonly<Record<Half, number>> = { front: 1, back: 2 };
/** How sure a notch with the usual teeth is, the only one of its half with others, and what one that meets it on the other side adds. */
const USUAL = 0.9;
const ONLY = 0.6;
const MET = 0.08;
const ONLY_MET = 0.25;
/** Balance notches that meet lie so near to one another from the underarm, mm: hardly any ease lies below them. */
const MEET_MM = 8;

/** How sure the notch at the top of a cap is: by itself, where the shoulder seam meets it, where that meets elsewhere, where another stands beside it. */
const CROWN = 0.85;
const CROWN_MET = 0.95;
const CROWN_ELSEWHERE = 0.6;
const CROWN_BESIDE = 0.7;
const SHOULDER_MEETS_MM = 4;

interface Found {
  readonly role: SignRole;
  readonly confidence: number;
  readonly because: Evidence;
}

/** The notches of one half of an armhole or cap. */
interface Part {
  readonly piece: ProposedPiece;
  readonly edge: ProposedEdge;
  readonly half: Half;
  readonly notches: readonly ProposedNotch[];
  readonly sure: number;
}

/**
 * Gives notches of armholes and caps their roles, as far as shape and company say: the notch at the top of a cap is the shoulder point, of the others
 * the one with one tooth in front and with two behind is the balance notch (common practice). What their maker wrote stands.
 */
export function withNotchRoles(
  pieces: readonly ProposedPiece[],
  seams: readonly ProposedSeam[],
): ProposedPiece[] {
  const roles = new Map<ProposedNotch, Found>();
  const parts = pieces.flatMap((piece) =>
    piece.edges.flatMap((edge) => {
      const crown = edge.role === 'cap' && !edge.half ? crownRole(piece, edge, pieces, seams) : null;
      if (crown) roles.set(crown.notch, crown.is);
      return partsOf(piece, edge, { pieces, seams }).map((part) => ({
        ...part,
        notches: part.notches.filter((notch) => !roles.has(notch)),
      }));
    }),
  );
  for (const part of parts) {
    const usual = part.notches.filter((notch) => notch.count === TEETH[part.half]);
    const notch = usual.length === 1 ? usual[0]! : part.notches.length === 1 ? part.notches[0]! : undefined;
    if (!notch) continue;
    const met = parts.some((other) => meets(part, notch, other, seams));
    const sure = usual.length === 1 ? USUAL + (met ? MET : 0) : ONLY + (met ? ONLY_MET : 0);
    roles.set(notch, {
      role: part.half === 'front' ? 'front-balance' : 'back-balance',
      confidence: sure * part.sure,
      because: SAY['balance-notch']({ teeth: notch.count, half: part.half, met }),
    });
  }
  return pieces.map((piece) =>
    piece.edges.some((edge) => edge.notches.some((notch) => roles.has(notch)))
      ? {
          ...piece,
          edges: piece.edges.map((edge) => ({
            ...edge,
            notches: edge.notches.map((notch) => ({ ...notch, ...roles.get(notch) })),
          })),
        }
      : piece,
  );
}

/** The halves of an armhole or cap whose sides are known; nothing of other edges. */
function partsOf(
  piece: ProposedPiece,
  edge: ProposedEdge,
  found: { readonly pieces: readonly ProposedPiece[]; readonly seams: readonly ProposedSeam[] },
): Part[] {
  const sure = Math.min(edge.confidence ?? 1, piece.confidence ?? 1);
  if (edge.role !== 'cap' && edge.role !== 'armhole') return [];
  const one = edge.half ?? (edge.role === 'armhole' ? piece.half : undefined);
  if (one === 'front' || one === 'back') return [{ piece, edge, half: one, notches: edge.notches, sure }];
  const halves = edge.role === 'cap' ? capHalves(piece, edge, found) : null;
  if (!halves) return [];
  const m = middleOf(edge.paths.length);
  const crown = crowns(edge)[m]!;
  return halves.map((half, i) => ({
    piece,
    edge,
    half,
    notches: edge.notches.filter((notch) => notch.at[m]! < crown === (i === 0)),
    sure,
  }));
}

/** Whether a notch of as many teeth lies as far from the underarm on what the edge is sewn to. */
function meets(part: Part, notch: ProposedNotch, other: Part, seams: readonly ProposedSeam[]): boolean {
  if (other.edge.role === part.edge.role || other.half !== part.half) return false;
  const isIn = (refs: readonly EdgeRef[], { piece, edge }: Part): boolean =>
    refs.some((ref) => ref.piece === piece.id && ref.edge === edge.id);
  const chains = seams
    .filter((seam) => seam.rank === 1)
    .flatMap(({ a, b }) => [[a, b] as const, [b, a] as const])
    .find(([a, b]) => isIn(a, part) && isIn(b, other));
  if (!chains) return false;
  const own = fromUnderarm(part, notch);
  return other.notches.some(
    (one) => one.count === notch.count && Math.abs(fromUnderarm(other, one) - own) <= MEET_MM,
  );
}

/** mm along its edge to the nearer end, middle size: balance notches lie in the lower half of an armhole. */
function fromUnderarm({ edge }: Part, notch: ProposedNotch): number {
  const m = middleOf(edge.paths.length);
  return Math.min(notch.at[m]!, 1 - notch.at[m]!) * edge.lengths[m]!;
}

/** The notch at the top of a cap drawn as one line. */
function crownRole(
  piece: ProposedPiece,
  cap: ProposedEdge,
  pieces: readonly ProposedPiece[],
  seams: readonly ProposedSeam[],
): { readonly notch: ProposedNotch; readonly is: Found } | null {
  const [notch, beside] = crownNotches(cap);
  if (!notch) return null;
  const off = fromShoulder(piece, cap, notch, pieces, seams);
  const met = off !== null && off <= 0;
  const by = (off === null ? CROWN : met ? CROWN_MET : CROWN_ELSEWHERE) * (beside ? CROWN_BESIDE : 1);
  return {
    notch,
    is: {
      role: 'shoulder-point',
      confidence: by * (cap.confidence ?? 1),
      because: SAY['crown-notch']({ met }),
    },
  };
}

/** How far beyond what ease allows a cap's notch lies from where the shoulder seam would meet it, mm; null where what the cap is sewn to does not say. */
function fromShoulder(
  piece: ProposedPiece,
  cap: ProposedEdge,
  notch: ProposedNotch,
  pieces: readonly ProposedPiece[],
  seams: readonly ProposedSeam[],
): number | null {
  const isCap = (refs: readonly EdgeRef[]): boolean =>
    refs.length === 1 && refs[0]!.piece === piece.id && refs[0]!.edge === cap.id;
  const armholes = seams
    .filter((seam) => seam.rank === 1)
    .map(({ a, b }) => (isCap(a) ? b : isCap(b) ? a : null))
    .find((refs) => refs !== null);
  const halves = capHalves(piece, cap, { pieces, seams });
  if (!armholes || !halves) return null;
  const m = middleOf(cap.lengths.length);
  const long = (half: Half): number =>
    armholes.reduce((sum, ref) => {
      const on = pieces.find((one) => one.id === ref.piece);
      return on?.half === half ? sum + on.edges.find((one) => one.id === ref.edge)!.lengths[m]! : sum;
    }, 0);
  const [first, last] = [long(halves[0]), long(halves[1])];
  if (first === 0 || last === 0) return null;
  const ease = Math.abs(cap.lengths[m]! - first - last);
  const at = (first / (first + last)) * cap.lengths[m]!;
  return Math.abs(notch.at[m]! * cap.lengths[m]! - at) - SHOULDER_MEETS_MM - ease;
}
