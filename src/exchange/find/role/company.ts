import type { EdgeRole, Half, PieceRole } from '../../../garment/index.ts';
import type { ProposedSeam } from '../proposal.ts';
import { ATTACHED_TO, COMPANY } from './company-table.ts';
import type { Halves } from './company-table.ts';
import type { Guess } from './match.ts';
import type { RunPiece } from './run.ts';

/** Two runs that the lengths and notches would sew together. */
export interface Join {
  readonly a: { readonly piece: number; readonly run: number };
  readonly b: { readonly piece: number; readonly run: number };
  /** How surely, 0..1. */
  readonly weight: number;
  /** Both halves of one are sewn to the other, as to a band cut whole; null where that cannot be told. */
  readonly whole: boolean | null;
}

/** The first-choice seams as pairs of runs; a chain of several edges is a pair for each. Darts are none. */
export function joinsOf(pieces: readonly RunPiece[], seams: readonly ProposedSeam[]): Join[] {
  const where = new Map<string, { piece: number; run: number }>();
  pieces.forEach(({ piece, runs }, p) =>
    runs.forEach((run, r) => {
      for (const edge of run.edges) where.set(`${piece.id} ${edge.id}`, { piece: p, run: r });
    }),
  );
  const known = new Map<string, Join>();
  for (const seam of seams) {
    if (seam.rank !== 1) continue;
    for (const p of seam.a) {
      for (const q of seam.b) {
        const a = where.get(`${p.piece} ${p.edge}`);
        const b = where.get(`${q.piece} ${q.edge}`);
        if (!a || !b) continue;
        const key = [`${a.piece}.${a.run}`, `${b.piece}.${b.run}`].toSorted().join(' ');
        if (known.has(key)) continue;
        const join = { a, b, weight: seam.score, whole: isWhole(seam, pieces) };
        known.set(key, join);
        for (const [one, other] of [
          [a, b],
          [b, a],
        ] as const) {
          const twin = twinOf(pieces[one.piece]!, one.run);
          if (twin === null || one.piece === other.piece) continue;
          const a2 = { piece: one.piece, run: twin };
          known.set(`${key} ${one.piece}`, { ...join, a: a2, b: other, weight: seam.score * TWIN });
        }
      }
    }
  }
  return [...known.values()];
}

/** Of two edges of a band that are quite alike the one may be sewn as well as the other; a little less, so that something is chosen. */
const TWIN = 0.9;
const ALIKE_MM = 0.3;

/** The other long edge of a band of which nothing tells the two apart; null where there is none. */
function twinOf({ runs }: RunPiece, run: number): number | null {
  const own = runs[run]!;
  if (runs.length !== 4 || own.notches.length > 0 || own.fold) return null;
  const across = (run + 2) % 4;
  const other = runs[across]!;
  const ends = Math.max(runs[(run + 1) % 4]!.long, runs[(run + 3) % 4]!.long);
  const alike = own.lengths.every((long, k) => Math.abs(long - other.lengths[k]!) < ALIKE_MM);
  return alike && ends < own.long && other.notches.length === 0 ? across : null;
}

/** Whether one side of a seam is walked through both halves; null where its pieces have no other half. */
function isWhole({ a, b }: ProposedSeam, pieces: readonly RunPiece[]): boolean | null {
  const chain = a.length > b.length ? a : b;
  if (new Set(chain.map((ref) => `${ref.piece} ${ref.edge}`)).size < chain.length) return true;
  const halved = chain.every((ref) => {
    const piece = pieces.find((one) => one.piece.id === ref.piece)?.piece;
    return piece && (piece.cut.mirrored || piece.edges.some((edge) => edge.kind === 'fold'));
  });
  return halved ? false : null;
}

/** What a run is in a guess. */
export interface Meaning {
  readonly role: EdgeRole;
  readonly half: Half | null;
  readonly piece: PieceRole;
  /** A band of which the other half lies beyond its fold or centre seam. */
  readonly halved: boolean;
  /** The lowest edge of the piece. */
  readonly foot: EdgeRole;
}

/** What a run is in a guess; null where the guess says nothing of it. */
export function meaningOf(guess: Guess, run: number): Meaning | null {
  const slot = guess.slots[run];
  if (!slot || !guess.contour) return null;
  const { half, role } = guess.contour;
  return {
    role: slot.role,
    half: slot.half ?? (half === 'front' || half === 'back' ? half : null),
    piece: role,
    halved: guess.contour.band === true && guess.contour.slots.some((one) => one.role === 'centre'),
    foot: guess.contour.slots[0]!.role,
  };
}

const FITS = new Map<string, Halves>(
  COMPANY.flatMap(([a, b, halves]) => [
    [`${a} ${b}`, halves],
    [`${b} ${a}`, halves],
  ]),
);

/** The ends of these are never sewn to one another. */
const OPEN_ENDS = new Set<PieceRole>(['collar', 'collar-stand', 'strap']);

/** Whether two meanings may be sewn together: `no`, `halves` where only front and back speak against it. */
export function fits(a: Meaning, b: Meaning): 'yes' | 'halves' | 'no' {
  const halves = FITS.get(`${a.role} ${b.role}`);
  if (!halves || (a.role === 'end' && OPEN_ENDS.has(a.piece))) return 'no';
  for (const [band, other] of [
    [a, b],
    [b, a],
  ] as const)
    if (band.role === 'attached' && !(ATTACHED_TO[band.piece] ?? [other.role]).includes(other.role))
      return 'no';
  if ([a, b].some((one) => one.role === 'outer' && one.piece !== 'collar-stand') && a.role !== b.role)
    return 'no';
  if (halves === 'any' || !a.half || !b.half) return 'yes';
  return (a.half === b.half) === (halves === 'same') ? 'yes' : 'halves';
}

/** What a seam says of the two meanings at its ends, as costs by how sure the seam is. */
const GOOD = -2.6;
const BAD = 3.2;
const HALVES = 1.6;
const ALONE = 0.8;

/** Edges that are sewn to another of their own piece, which closes it to a tube, or to its other half. */
const CLOSES = new Set<EdgeRole>(['underarm', 'inseam', 'rise', 'centre', 'end']);

/** A half band on what is walked through both halves, or a whole one on one half. */
const WRONG_HALF = 1.6;
/** Two pieces sewn side by side of which one ends at the waist and the other at the hem. */
const OTHER_FOOT = 1.2;
const UPRIGHT = new Set<EdgeRole>(['side', 'panel', 'centre']);

/** The cost of sewing two runs as the guesses see them. */
export function joinCost(a: Meaning | null, b: Meaning | null, join: Join): number {
  const { weight, whole } = join;
  if (!a && !b) return 0;
  if (!a || !b) return ALONE * weight;
  const fit = join.a.piece === join.b.piece && !CLOSES.has(a.role) ? 'no' : fits(a, b);
  const band = a.role === 'attached' ? a : b.role === 'attached' ? b : null;
  const round = a.role === 'neck' || b.role === 'neck' || a.role === 'waist' || b.role === 'waist';
  const half = band && round && whole !== null && band.halved === whole ? WRONG_HALF : 0;
  const foot = UPRIGHT.has(a.role) && UPRIGHT.has(b.role) && a.foot !== b.foot ? OTHER_FOOT : 0;
  return weight * ((fit === 'yes' ? GOOD : fit === 'halves' ? HALVES : BAD) + half + foot);
}
