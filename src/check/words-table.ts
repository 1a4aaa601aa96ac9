import {
  EDGE_NAMES,
  HALF_NAMES,
  PIECE_NAMES,
  called,
  calledAll,
  degrees,
  findingMaker,
  len,
  levelWord,
  notchName,
  plural,
  t,
  word,
  type EdgeRole,
  type Phrase,
  type PieceHalf,
  type PieceRole,
} from '../garment/index.ts';

type Of = { readonly piece: string };
type OnEdge = Of & { readonly edge: string };
/** One side of a seam: the pieces it runs over, and how long it is walked. */
type Side = { readonly pieces: readonly string[]; readonly length: number };

const side = ({ pieces, length }: Side): Phrase => t`${calledAll(pieces, 'and')} (${len(length)})`;

/** Where a role is worn, where its name leaves that open. */
const worn = (half: PieceHalf | null, name: string): Phrase | null =>
  (half === 'front' || half === 'back') && !name.includes(half)
    ? t` ${word('half', half, HALF_NAMES[half])}`
    : null;

/** What has to be done about a guess, and why. */
const SAY_IT = t`Alterations look for pieces and edges by what they are: look, and say what it is.`;

/** The sentences of this room. Pieces, edges, seams and darts by their names. */
export const CHECK_WORDS = {
  'level-unmeasured': ({ level, pieces }: { level: string; pieces: readonly string[] }) =>
    t`The finished ${levelWord(level)} cannot be measured: ${calledAll(pieces)} ${plural(pieces.length, t`has`, t`have`)} no ${levelWord(level)} line that crosses the outline.`,
  'girth-off-target': (v: { level: string; girth: number; target: number; movable: boolean }) =>
    t`Finished ${levelWord(v.level)}: the pieces measure ${len(v.girth)}, wanted ${len(v.target)}, so ${len(Math.abs(v.girth - v.target))} too ${v.girth < v.target ? t`small` : t`large`}. ${
      v.movable
        ? t`The seams that may move could not take the whole change: choose another size at this level, let more seams move, or alter.`
        : t`No seam may move at the ${levelWord(v.level)}, so the plan could not set it: use an alteration there, or another size.`
    }`,
  'girth-altered': (v: { level: string; by: number; girth: number; target: number; body: number | null }) =>
    t`The alterations make the finished ${levelWord(v.level)} ${len(Math.abs(v.by))} ${v.by > 0 ? t`larger` : t`smaller`} than planned: ${len(v.girth)} instead of ${len(v.target)}.${v.body === null ? t`` : t` That is less than the body, ${len(v.body)}.`}`,
  'piece-unsure': (v: Of & { role: PieceRole | null; half: PieceHalf | null }) =>
    v.role === null
      ? t`What the piece ${called(v.piece)} is, the drawing does not show, and nobody has said. ${SAY_IT}`
      : t`${called(v.piece)} was taken for the ${word('piece', v.role, PIECE_NAMES[v.role])}${worn(v.half, PIECE_NAMES[v.role])}, but not surely, and nobody has said. ${SAY_IT}`,
  'edge-unsure': (v: OnEdge & { role: EdgeRole | null; half: PieceHalf | null }) =>
    v.role === null
      ? t`${called(v.piece)}: what the edge ${called(v.edge)} is, the drawing does not show, and nobody has said. ${SAY_IT}`
      : t`${called(v.piece)}: ${called(v.edge)} was taken for the ${word('edge', v.role, EDGE_NAMES[v.role])}${worn(v.half, EDGE_NAMES[v.role])}, but not surely, and nobody has said. ${SAY_IT}`,
  'outline-not-a-number': ({ piece }: Of) =>
    t`${called(piece)}: part of the outline could not be worked out, so the piece cannot be drawn.`,
  'outline-open': ({ piece, edge, next, gap }: OnEdge & { next: string; gap: number }) =>
    t`${called(piece)}: ${called(edge)} ends ${len(gap)} from where ${called(next)} begins. The outline must be closed to be cut.`,
  'edge-tiny': ({ piece, edge, length }: OnEdge & { length: number }) =>
    t`${called(piece)}: ${called(edge)} is only ${len(length)} long. Look whether an alteration has eaten it.`,
  'edge-turns-back': ({ piece, edge }: OnEdge) =>
    t`${called(piece)}: ${called(edge)} turns back on itself. An alteration asks more of this curve than it has room for.`,
  'outline-inverted': ({ piece }: Of) => t`${called(piece)}: the outline has turned inside out.`,
  'outline-crosses-itself': ({ piece, edge, other }: OnEdge & { other: string | null }) =>
    t`${called(piece)}: ${called(edge)} crosses ${other === null ? t`itself` : t`${called(other)}`}. The piece cannot be cut like this.`,
  'dart-without-legs': ({ piece, dart }: Of & { dart: string }) =>
    t`${called(piece)}: the ${called(dart)} has lost one of its legs.`,
  'dart-legs-differ': ({ piece, dart, off }: Of & { dart: string; off: number }) =>
    t`${called(piece)}: the legs of the ${called(dart)} differ by ${len(off)}, so it cannot be stitched flat.`,
  'corner-not-square': ({
    piece,
    edge,
    angle,
    fold,
    peak,
  }: OnEdge & { angle: number; fold: boolean; peak: boolean }) =>
    t`${called(piece)}: ${called(edge)} meets the ${fold ? t`fold` : t`opening`} at ${degrees(angle)} instead of square, so it will come to a ${peak ? t`peak` : t`dip`} when ${fold ? t`unfolded` : t`closed`}.`,
  'grain-missing': ({ piece }: Of) =>
    t`${called(piece)} has no grainline, so nothing says how it lies on the cloth.`,
  'grain-off': ({ piece, angle }: Of & { angle: number }) =>
    t`${called(piece)}: the grainline leans ${degrees(angle, 1)} against the fold. Cut on the fold, the grain follows the fold.`,
  'corner-not-smooth': (v: OnEdge & { off: number; seam: string | null; a: number; b: number }) =>
    t`${called(v.piece)}: ${called(v.edge)} turns by ${degrees(Math.abs(v.off))} ${v.seam === null ? t`over its folded dart` : t`across the seam “${called(v.seam)}”`} (${degrees(v.a)} and ${degrees(v.b)}, together they should make ${degrees(180)}).`,
  'corner-beyond-bound': (v: OnEdge & { off: number; sway: number; bound: number }) =>
    t`${called(v.piece)}: ${called(v.edge)} turns by ${degrees(Math.abs(v.off))}; smoothing it would move the line by ${len(v.sway)}, more than the ${len(v.bound)} allowed, so it was left.`,
  'seam-edge-missing': ({ seam, piece, edge }: OnEdge & { seam: string }) =>
    t`The seam “${called(seam)}” names an edge “${called(edge)}” of “${called(piece)}” that this garment does not have, so it cannot be walked.`,
  'seam-differs': (v: {
    seam: string;
    long: Side;
    short: Side;
    off: number;
    join: 'plain' | 'eased' | 'gathered';
  }) =>
    v.join === 'plain'
      ? t`Seam “${called(v.seam)}”: ${side(v.long)} is ${len(Math.abs(v.off))} longer than ${side(v.short)}.`
      : t`Seam “${called(v.seam)}”: ${side(v.long)} is ${len(Math.abs(v.off))} longer than the intended ${v.join === 'eased' ? t`ease` : t`gathering`} allows, against ${side(v.short)}.`,
  'notch-differs': ({ seam, notch, off }: { seam: string; notch: string; off: number }) =>
    t`Seam “${called(seam)}”: the notches “${called(notchName(notch))}” miss one another by ${len(Math.abs(off))}.`,
  'seam-not-trued': (v: { seam: string; off: number; full: boolean; limit: number | null }) =>
    t`Seam “${called(v.seam)}” could not be trued: its sides still differ by ${len(Math.abs(v.off))}${v.full ? t` beyond the intended fullness` : t``}. ${
      v.limit === null
        ? t`The corners it ends in cannot move along it (a fold or the maker’s line is in the way).`
        : t`Its end would have to move by more than ${len(v.limit)}: that is an alteration, not truing. Undo or change the alteration that made the difference.`
    }`,
};

export const checkFinding = findingMaker(CHECK_WORDS);
