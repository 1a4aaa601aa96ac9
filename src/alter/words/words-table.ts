import {
  called,
  EDGE_NAMES,
  calledAll,
  degrees,
  figure,
  findingMaker,
  keyWord,
  len,
  levelWord,
  t,
  word,
  type Level,
  type Phrase,
} from '../../garment/index.ts';
import { PROMISE_WORDS } from './promise-words.ts';

type Of = { readonly piece: string };
type OnEdge = Of & { readonly edge: string };

/** What is looked for, as a sewist calls it. */
const ROLES = {
  ...EDGE_NAMES,
  crotch: 'crotch seam',
  dart: 'dart',
  'waist-dart': 'waist dart',
  leg: 'leg seam',
  sleeve: 'sleeve',
} as const;
type Role = keyof typeof ROLES;
export type RoleName = Role;

const roleWord = (role: Role) => word('role', role, ROLES[role]);

const noRole = (v: { role: Role; on: { half: 'front' | 'back' } | Of | 'between' | null }): Phrase => {
  const what = roleWord(v.role);
  if (v.on === null) return t`No ${what} was found on this pattern.`;
  if (v.on === 'between') return t`No ${what} between front and back was found on this pattern.`;
  return 'piece' in v.on
    ? t`No ${what} was found on ${called(v.on.piece)}.`
    : t`No ${what} was found on the ${keyWord('half', v.on.half)} of this pattern.`;
};
const NO_ROLE = Object.fromEntries(Object.keys(ROLES).map((role) => [`no-${role}`, noRole])) as Readonly<
  Record<`no-${Role}`, typeof noRole>
>;

const noHalf = ({ half }: { half: 'front' | 'back' }): Phrase =>
  t`No ${keyWord('half', half)} piece was found on this pattern: say what its pieces and edges are first.`;

const sizeOf = (level: Level | null): Phrase =>
  level === null ? t`The base size` : t`The size at the ${levelWord(level)} level`;

/** By how much a half of a cap changed. */
const halfCap = (mm: number): Phrase =>
  Math.abs(mm) < 0.05 ? t`unchanged` : t`${mm > 0 ? t`longer` : t`shorter`} by ${len(Math.abs(mm))}`;

/** What a pair of amounts is not: an amount of a parameter, in its own kind. */
export type Amount =
  | { readonly mm: number; readonly kind: 'length' }
  | { readonly degrees: number; readonly kind: 'angle' }
  | { readonly number: number; readonly kind: 'share' };
const amountOf = (a: Amount): Phrase =>
  a.kind === 'length'
    ? t`${len(a.mm)}`
    : a.kind === 'angle'
      ? t`${figure(a.degrees)} degrees`
      : t`${figure(a.number)}`;

/** What is wrong with a parameter, as it was given. */
export type BadParameter =
  | { readonly is: 'no-number'; readonly given: string }
  | { readonly is: 'no-word'; readonly given: string }
  | { readonly is: 'out-of-bounds'; readonly least: Amount; readonly most: Amount; readonly given: Amount }
  | { readonly is: 'unknown-choice'; readonly known: readonly string[]; readonly given: string }
  | { readonly is: 'unknown'; readonly known: readonly string[]; readonly given: string };

const badParameter = (name: Phrase, bad: BadParameter): Phrase => {
  if (bad.is === 'no-number') return t`${name} must be a number, not ${called(bad.given)}.`;
  if (bad.is === 'no-word') return t`${name} must be a word, not ${called(bad.given)}.`;
  if (bad.is === 'out-of-bounds')
    return t`${name} must lie between ${amountOf(bad.least)} and ${amountOf(bad.most)}, not ${amountOf(bad.given)}.`;
  if (bad.is === 'unknown')
    return t`there is no parameter ${called(bad.given)}; it takes ${calledAll(bad.known)}.`;
  return t`${name} must be one of ${calledAll(bad.known)}, not ${called(bad.given)}.`;
};

/** A parameter of an alteration, both by their names. */
type Param = { readonly alteration: Phrase; readonly name: Phrase };

/** The sentences of this room: what it found, and why an alteration was refused. Pieces, edges and darts by their names. */
export const ALTER_WORDS = {
  ...PROMISE_WORDS,
  ...NO_ROLE,
  'no-front': noHalf,
  'no-back': noHalf,
  'no-level': ({ on, level }: { on: { role: Role } | Of; level: Level }) =>
    'role' in on
      ? t`No ${roleWord(on.role)} of this pattern crosses the ${levelWord(level)} level.`
      : t`${called(on.piece)} has no ${levelWord(level)} level: draw it first.`,
  'no-side-dart': ({ piece }: Of) =>
    t`${called(piece)} has no side dart; use the bust alteration for a front without one.`,
  'no-waist-dart': ({ piece }: Of) => t`${called(piece)} has no waist dart that points to the bust.`,
  'has-side-dart': ({ piece }: Of) =>
    t`${called(piece)} has a side dart already; use the bust alteration for it.`,
  'no-bust-to-take': () => t`A front without a dart has no bust to take away: take in the side seams.`,
  'no-room': ({ piece, room, up }: Of & { room: number; up: number }) =>
    t`${called(piece)}: the panel seam has only ${len(room)} ${up > 0 ? t`above` : t`below`} the bust line, too little to move its curve by ${len(Math.abs(up))}.`,
  'no-elbow': ({ piece }: Of) => t`${called(piece)}: the elbow line does not meet the back seam.`,
  'waist-without-width': () => t`The waist seam of this pattern has no width.`,
  'piece-missing': ({ piece }: Of) => t`There is no piece ${called(piece)} in this garment.`,
  'edge-missing': ({ piece, edge }: OnEdge) => t`${called(piece)} has no edge “${called(edge)}”.`,
  'no-such-edge': ({ piece, edge }: OnEdge) => t`${called(piece)} has no edge “${called(edge)}” to move.`,
  'no-edge': ({ piece }: Of) => t`Say to which edge of ${called(piece)} the dart goes.`,
  'dart-missing': ({ piece, dart }: Of & { dart: string }) =>
    t`${called(piece)} has no dart${dart === '' ? t`` : t` “${called(dart)}”`}.`,
  'dart-too-small': ({ piece, dart, has, asked }: Of & { dart: string; has: number; asked: number }) =>
    t`${called(piece)}: the ${called(dart)} takes in ${len(has)}; ${len(asked)} cannot be let out of it.`,
  'dart-into-itself': ({ piece }: Of) => t`${called(piece)}: a dart cannot be moved into its own leg.`,
  'no-room-for-dart': ({ piece, edge }: OnEdge) =>
    t`${called(piece)}: there is no room for a dart at that place of the ${called(edge)}.`,
  'no-dart-front': () =>
    t`The front of this pattern is not one piece from centre to side; use the bust alteration for panel seams.`,
  'no-panel-seam': () => t`No front panel seam was found on this pattern.`,
  'fold-cannot-bend': ({ piece, edge }: OnEdge) =>
    t`${called(piece)}, ${called(edge)}: a fold is straight, so it can only move by the same amount at both ends. Cut it with a seam instead.`,
  'fold-swallows-corner': ({ piece, edge, fold, beyond }: OnEdge & { fold: number; beyond: number }) =>
    t`${called(piece)}: folding out ${len(fold)} would swallow the corner where ${called(edge)} begins, ${len(beyond)} beyond the line. Move the line or fold less.`,
  'fold-too-deep': ({ piece, room, fold }: Of & { room: number; fold: number }) =>
    t`${called(piece)}: there are only ${len(room)} between those levels, too little to fold out ${len(fold)}.`,
  'strip-too-wide': ({ piece, edge, width, long }: OnEdge & { width: number; long: number }) =>
    t`${called(piece)}: a strip of ${len(width)} is wider than ${called(edge)} is long (${len(long)}).`,
  'slash-too-short': ({ width }: { width: number }) =>
    t`The armhole hinge is too near to the bust point to open ${len(width)}.`,
  'no-bust-point': ({ piece }: { piece: string | null }) =>
    t`${piece === null ? t`The front` : called(piece)} has neither a bust point nor a bust dart: mark the bust point first.`,
  'no-line': ({ half }: { half: 'front' | 'back' }) =>
    t`The ${keyWord('half', half)} has no place for this: draw its waist, bust or hip level first.`,
  'no-way-out': ({ piece }: Of) =>
    t`${called(piece)} has neither a dart nor a seam into which the gap could be folded.`,
  'line-misses': ({ piece }: Of) =>
    t`${called(piece)}: the line for this alteration does not cross the piece.`,
  'no-slash': ({ piece }: Of) =>
    t`${called(piece)}: no upright slash from its upper to its lower edge misses its seams.`,
  'no-seam': ({ piece }: Of) => t`${called(piece)}: no seam next to the dart's edge can take it in.`,
  'no-crown': ({ piece }: Of) => t`${called(piece)}: its cap has no shoulder point to raise.`,
  'cap-not-drawn': ({ piece, old }: Of & { old: boolean }) =>
    old
      ? t`${called(piece)}: no cap of the old length fits that width.`
      : t`${called(piece)}: no cap of that length could be drawn.`,

  'cap-follows': ({ front, back }: { front: number; back: number }) =>
    t`Sleeve cap: front half ${halfCap(front)}, back half ${halfCap(back)}, as the armhole, so that its ease stays the same.`,
  'cap-not-reached': ({ by, halves }: { by: number; halves: boolean }) =>
    t`The armhole changed by ${len(by)}, but the sleeve cap could not follow: ${halves ? t`no cap of that length could be drawn` : t`its cap is not drawn as a front and a back half`}. Its ease is no longer as intended.`,
  'sleeve-parted': () =>
    t`The two armholes now differ, so the left and the right sleeve become pieces of their own.`,
  'band-follows': ({ piece, by, seam }: Of & { by: number; seam: string }) =>
    t`${called(piece)}: ${by >= 0 ? t`lengthened` : t`shortened`} by ${len(Math.abs(by))} at the matching place, with ${called(seam)}.`,
  'cut-open-on-fold': ({ piece, edge }: OnEdge) =>
    t`${called(piece)}: left and right now differ, so it cannot be cut on the fold. Tape the two halves together along the ${called(edge)} and cut them as one piece.`,
  'follower-by-edges': ({ piece }: Of) =>
    t`${called(piece)} is too small to be cut in the same place; its edges were made to fit instead. Check its free edge.`,
  'follower-not-reached': ({ piece, what }: Of & { what: string }) =>
    t`${called(piece)} has no counterpart of this ${keyWord('shape', what)}; its edges went along, but draw the ${keyWord('shape', what)} there by hand.`,
  'facing-takes-dart': ({ piece, intake }: Of & { intake: number }) =>
    t`${called(piece)}: fold out ${len(intake)} where the dart lies, instead of a dart.`,
  'share-without-edge': ({ piece, edge, level }: OnEdge & { level: Level }) =>
    t`The plan moves the edge “${called(edge)}” of “${called(piece)}” at the ${levelWord(level)} level, but that edge does not meet that level. Its share was not drawn.`,
  'size-not-a-number': ({ level, size }: { level: Level | null; size: string }) =>
    t`${sizeOf(level)} could not be worked out. Size ${called(size)} stands in; set a size by hand.`,
  'size-beyond-nest': (v: { level: Level | null; beyond: number; size: string; step: number }) =>
    t`${sizeOf(v.level)} lies ${figure(v.beyond, 1, 1)} sizes beyond ${called(v.size)}, the outermost size of this pattern. It is drawn ${v.step} size beyond; the rest would be guesswork.`,
  'size-extrapolated': ({ level, size }: { level: Level | null; size: string }) =>
    t`${sizeOf(level)} is drawn beyond ${called(size)}, the outermost size of this pattern, by carrying its last step on. Try it in cheap cloth first.`,
  'centre-shaped': ({ piece, edge }: OnEdge) =>
    t`${called(piece)}: the ${called(edge)} now bends at the blade line; round it off there when truing.`,
  'neck-eased': ({ piece, off }: Of & { off: number }) =>
    off > 0
      ? t`${called(piece)}: the neckline is ${len(off)} longer; ease it into the collar or facing.`
      : t`${called(piece)}: the neckline is ${len(-off)} shorter; stretch it, or widen the neck at the shoulder by as much.`,
  'gap-closed': (v: {
    pieces: readonly string[];
    gap: number;
    to:
      | { way: 'between'; role: Role }
      | { way: 'dart'; edge: string; dart: string; opens: number }
      | { way: 'seam'; edge: string; seam: string };
  }) => {
    const start = t`${calledAll(v.pieces, 'and')}: ${len(v.gap)}`;
    if (v.to.way === 'between')
      return t`${start} taken in at the seam between them, from the ${roleWord(v.to.role)} down to nothing.`;
    return v.to.way === 'dart'
      ? t`${start} folded out at the ${called(v.to.edge)}; the ${called(v.to.dart)} opens by ${len(v.to.opens)}.`
      : t`${start} folded out at the ${called(v.to.edge)}, to nothing at the ${called(v.to.seam)}.`;
  },
  'fold-bent': ({ piece, edge, off }: OnEdge & { off: number }) =>
    t`${called(piece)}: the ${called(edge)} is no longer straight (off by ${len(off)}) and cannot be cut on the fold. Cut it with a seam there, or take the amount to the side.`,
  'fold-off-grain': ({ piece, edge, angle }: OnEdge & { angle: number }) =>
    t`${called(piece)}: the ${called(edge)} on the fold now runs ${degrees(angle, 1)} off the grain.`,
  'beyond-limit': (v: Param & { amount: Amount; most: Amount; say: Phrase }) =>
    t`${v.alteration}: ${v.name} of ${amountOf(v.amount)} is more than the usual most of ${amountOf(v.most)}. ${v.say}`,
  'bad-parameter': (v: Param & { bad: BadParameter }) => t`${v.alteration}: ${badParameter(v.name, v.bad)}`,
  'unknown-alteration': ({ entry }: { entry: string }) =>
    t`There is no alteration called “${called(entry)}” in this version. The step is kept but does nothing.`,
  'seam-takes-dart': ({ piece, intake }: Of & { intake: number }) =>
    t`${called(piece)}: ${len(intake)} that were in the dart are taken in at the seam beside it, running out at the height of the dart's point.`,
  'dart-eased': ({ piece, intake, much }: Of & { intake: number; much: boolean }) =>
    t`${called(piece)}: ${len(intake)} that were in the dart are now eased into the seam${much ? t`; that much has to be gathered or pleated` : t``}.`,
  'cap-too-full': ({ piece, up }: Of & { up: number }) =>
    t`${called(piece)}: the cap is raised by ${len(up)} only. Any higher it would be fuller than this armhole can take in; make the upper arm narrower or the armhole larger first.`,
  'cap-let-out': ({ piece, by }: Of & { by: number }) =>
    t`${called(piece)}: a cap this low would be too short for its armhole, so it is let out by ${len(by)} at each underarm seam.`,
  'cap-ease-changed': ({ eased, drop }: { eased: number; drop: number | null }) =>
    t`Sleeve cap: its seam is ${len(Math.abs(eased))} ${eased < 0 ? t`shorter` : t`longer`}; that is ${eased < 0 ? t`less` : t`more`} ease to set in${drop === null ? t`` : t`. The armhole takes no more, so its height is ${len(Math.abs(drop))} ${drop < 0 ? t`more` : t`less`} after all`}.`,
  'cap-height-changed': ({ drop }: { drop: number }) =>
    t`Sleeve cap: its height is ${len(Math.abs(drop))} ${drop < 0 ? t`more` : t`less`}, its seam as long as before.`,
  'cap-covers-arm': (v: { up: number; capped: boolean; covers: number; eased: number }) =>
    t`Sleeve cap: ${v.up < 0 ? t`lowered` : t`raised`} by ${len(Math.abs(v.up))}${v.capped ? t` (with more it could not be set into this armhole)` : t``}, because the shoulder now covers that much ${v.covers > 0 ? t`more` : t`less`} of the arm. Its ease is ${len(Math.abs(v.eased))} ${v.eased < 0 ? t`less` : t`more`} than before.`,
  'centre-swings': ({ swing, off }: { swing: number; off: number }) =>
    off === 0
      ? t`Below the fold the centre back swings out by ${len(swing)} at its lower end; it is left in the shape of the seam.`
      : t`Below the fold the centre back swings out by ${len(Math.abs(off))} at its lower end; it is made straight there and the same width is given at the side of the hem.`,
  'elbow-eased': ({ piece, by }: Of & { by: number }) =>
    t`${called(piece)}: the back underarm seam is ${len(Math.abs(by))} ${by < 0 ? t`shorter` : t`longer`} than the front; ease it in at the elbow.`,
  'front-longer': ({ piece, drop, angle }: Of & { drop: number; angle: number }) =>
    t`${called(piece)}: the centre front becomes ${len(Math.abs(drop))} ${drop < 0 ? t`shorter` : t`longer`} and the side section turns by ${degrees(angle, 2)} about the armhole notch.`,
};

export const alterFinding = findingMaker(ALTER_WORDS);
