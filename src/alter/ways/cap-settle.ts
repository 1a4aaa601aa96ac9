import { pathLength } from '../../geometry/index.ts';
import { chainLength, edgesOf, pieceAt } from '../../garment/index.ts';
import type { DrawnPiece, EdgeId, EdgeRef, Garment, PieceId, Seam } from '../../garment/index.ts';
import { followersOf, mapSeams } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { inch } from '../entry/param.ts';
import { pieceOf } from '../role/roles.ts';

/** Two amounts of fullness nearer than this are one. */
const SAME_MM = 0.05;
/** Most fullness that a sleeve drawn with little or none takes: shirts and knits, 0 to 1/2 in (docs/trade.md 3.6). */
const PLAIN_MOST_MM = inch(0.5);
/** Most that any set-in sleeve takes: tailored wool, up to 2 in (docs/trade.md 3.6, memory). */
const EASED_MOST_MM = inch(2);

/** Length of a sleeve's cap, both halves. */
export const capLength = (piece: DrawnPiece): number =>
  edgesOf(piece, 'cap').reduce((sum, e) => sum + pathLength(e.path), 0);

/** A seam with the cap in one of its chains: which chain, the fullness it has and the fullness it is meant to have. */
interface SetIn {
  readonly seam: Seam;
  readonly cap: 'a' | 'b';
  readonly has: number;
  readonly least: number;
  readonly most: number;
}

const setIns = (garment: Garment, piece: PieceId, caps: ReadonlySet<EdgeId>): SetIn[] =>
  garment.seams.flatMap((seam): SetIn[] => {
    const holds = (chain: readonly EdgeRef[]): boolean =>
      chain.some((r) => r.piece === piece && caps.has(r.edge));
    const cap = holds(seam.a) ? 'a' : holds(seam.b) ? 'b' : undefined;
    // A gathered cap takes what there is.
    if (!cap || seam.join.kind === 'gathered') return [];
    const more = chainLength(garment, seam.a) - chainLength(garment, seam.b);
    const range = seam.join.kind === 'eased' ? seam.join : { least: 0, most: 0 };
    return cap === 'a'
      ? [{ seam, cap, has: more, least: range.least, most: range.most }]
      : [{ seam, cap, has: -more, least: -range.most, most: -range.least }];
  });

const capsOf = (piece: DrawnPiece): ReadonlySet<EdgeId> => new Set(edgesOf(piece, 'cap').map((e) => e.id));

const clamp = (x: number, least: number, most: number): number => Math.min(most, Math.max(least, x));

/**
 * How much a sleeve's cap may grow or shrink on its own so that it can still be set in: never shorter than its armhole, never fuller than
 * its kind of seam takes (docs/trade.md 3.6). What the pattern itself has beyond that stays allowed.
 */
export function capRoom(garment: Garment, sleeve: PieceId): { least: number; most: number } {
  const room = { least: -Infinity, most: Infinity };
  for (const s of setIns(garment, sleeve, capsOf(pieceOf(garment, sleeve)))) {
    const meant = clamp(s.has, s.least, s.most);
    const top = Math.max(s.most, s.most <= PLAIN_MOST_MM ? PLAIN_MOST_MM : EASED_MOST_MM);
    room.least = Math.max(room.least, Math.min(0, s.least, meant) - meant);
    room.most = Math.min(room.most, top - meant);
  }
  return room;
}

/**
 * After a cap was made longer or shorter on purpose (or its armhole, the cap not following): its seams, and its lining's, are now meant to have the fullness that came of it, so
 * that it is not told to be wrong. Only by what this alteration did; what was off before stays off.
 */
export function capEaseMeant(change: Change, sleeve: PieceId): void {
  for (const id of [sleeve, ...followersOf(change.garment, sleeve).map((f) => f.piece)]) {
    const before = pieceAt(change.before, id);
    if (!before) continue;
    const was = new Map(setIns(change.before, id, capsOf(before)).map((s) => [s.seam.id, s]));
    const now = new Map(
      setIns(change.garment, id, capsOf(pieceOf(change.garment, id))).map((s) => [s.seam.id, s]),
    );
    mapSeams(change, (seam) => {
      const old = was.get(seam.id);
      const own = now.get(seam.id);
      if (!old || !own) return seam;
      const meant = clamp(old.has, old.least, old.most) + own.has - old.has;
      if (meant >= old.least - SAME_MM && meant <= old.most + SAME_MM) return seam;
      const plain = old.seam.join.kind === 'plain';
      const least = plain ? meant : Math.min(old.least, meant);
      const most = plain ? meant : Math.max(old.most, meant);
      return {
        ...seam,
        join:
          own.cap === 'a' ? { kind: 'eased', least, most } : { kind: 'eased', least: -most, most: -least },
      };
    });
  }
}
