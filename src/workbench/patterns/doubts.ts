import type { EdgeRole, Half, Phrase, PieceHalf, PieceRole } from '../../garment/index.ts';
import { EDGE_NAMES, HALF_NAMES, PIECE_NAMES } from '../../garment/index.ts';
import { inDoubt, type PieceCorrection } from '../../exchange/index.ts';
import type { FoundEdge, FoundPiece, FoundRole } from './read-worker.ts';

/** So many answers are offered; anything else is said in the list of what was found. */
const MOST_ANSWERS = 5;

/** One answer to a doubt, in words. */
export type DoubtAnswer =
  | { readonly words: string; readonly of: 'piece'; readonly role: PieceRole; readonly half?: PieceHalf }
  | { readonly words: string; readonly of: 'edge'; readonly role: EdgeRole; readonly half?: Half };

export interface Doubt {
  readonly piece: string;
  /** Absent: the doubt is about the piece itself. */
  readonly edge?: string;
  readonly question: string;
  readonly evidence: Phrase | null;
  /** The likeliest first. */
  readonly answers: readonly DoubtAnswer[];
}

type Said = Readonly<Record<string, PieceCorrection>>;

/** What a piece may be where nothing was thought of it. */
const PIECES: readonly { readonly role: PieceRole; readonly half: PieceHalf }[] = [
  { role: 'front', half: 'front' },
  { role: 'back', half: 'back' },
  { role: 'sleeve', half: 'arm' },
  { role: 'waistband', half: 'both' },
  { role: 'pocket', half: 'none' },
];
/** What an edge may be where nothing was thought of it. */
const EDGES: Readonly<Record<PieceHalf, readonly EdgeRole[]>> = {
  front: ['side', 'centre', 'hem', 'armhole', 'waist'],
  back: ['side', 'centre', 'hem', 'armhole', 'waist'],
  both: ['attached', 'outer', 'end'],
  arm: ['cap', 'underarm', 'wrist'],
  none: ['attached', 'opening'],
};

/**
 * What is in doubt, what decides most first: what pieces are (large and worn on the body before small), then their edges, the least sure first.
 * What repeats another piece follows it; edges of a piece in doubt, and of one that is worn nowhere of its own, wait. What was left open is not asked again.
 */
export function doubtsOf(pieces: readonly FoundPiece[], said: Said): readonly Doubt[] {
  const wanted = pieces.filter((piece) => !piece.follows && !said[piece.id]?.leaveOut);
  const unsure = ({ found }: FoundPiece): boolean => inDoubt(found);
  const order = (piece: FoundPiece): number =>
    ['front', 'back', 'both', 'arm', 'none'].indexOf(piece.found.half ?? 'front');
  const asked = wanted.filter((piece) => unsure(piece) && !said[piece.id]?.open);
  const known = wanted.filter((piece) => !unsure(piece) && piece.found.half !== 'none');
  const edges = known
    .flatMap((piece) => piece.edges.map((edge) => ({ piece, edge })))
    .filter(
      ({ piece, edge }) =>
        edge.kind !== 'dart' && edge.kind !== 'fold' && inDoubt(edge.found) && !isOpen(said, piece, edge),
    );
  return [
    ...asked.toSorted((a, b) => order(a) - order(b)).map(aboutPiece),
    ...edges
      .toSorted(
        (a, b) => order(a.piece) - order(b.piece) || a.edge.found.confidence - b.edge.found.confidence,
      )
      .map(({ piece, edge }) => aboutEdge(piece, edge)),
  ];
}

const isOpen = (said: Said, piece: FoundPiece, edge: FoundEdge): boolean =>
  said[piece.id]?.edges?.[edge.id]?.open ?? false;

function aboutPiece({ id, name, found }: FoundPiece): Doubt {
  const answers = likeliest(found, PIECES).map(({ role, half }): DoubtAnswer => ({
    of: 'piece',
    words: pieceWords(role, half),
    role,
    ...(half ? { half } : {}),
  }));
  return {
    piece: id,
    question: found.role ? `Is “${name}” the ${answers[0]!.words}?` : `What is “${name}”?`,
    evidence: found.because,
    answers,
  };
}

function aboutEdge(piece: FoundPiece, { id, found }: FoundEdge): Doubt {
  const usual = EDGES[piece.found.half ?? 'front'].map((role) => ({ role }));
  const answers = likeliest(found, usual).map(({ role, half }): DoubtAnswer => ({
    of: 'edge',
    words: edgeWords(role, half),
    role,
    ...(half ? { half } : {}),
  }));
  return {
    piece: piece.id,
    edge: id,
    question: `“${piece.name}”: ${found.role ? `is this the ${answers[0]!.words}` : 'what is this edge'}?`,
    evidence: found.because,
    answers,
  };
}

/** What it is thought to be, what else it may be, then what such a thing usually is; each once. */
function likeliest<Role extends string, Where extends string>(
  found: FoundRole<Role, Where>,
  usual: readonly { readonly role: Role; readonly half?: Where }[],
): readonly { readonly role: Role; readonly half?: Where }[] {
  const { role, half, otherwise } = found;
  const best = role ? [{ role, ...(half ? { half } : {}) }] : [];
  const all = [
    ...best,
    ...otherwise,
    ...usual.filter((one) => ![...best, ...otherwise].some((o) => o.role === one.role)),
  ];
  return all.slice(0, MOST_ANSWERS);
}

/** “front”, “yoke behind”: where it is worn is said where the name does not. */
function pieceWords(role: PieceRole, half: PieceHalf | undefined): string {
  const name = PIECE_NAMES[role];
  return half === undefined || half === 'none' || half === 'both' || half === 'arm' || name.includes(half)
    ? name
    : `${name} ${HALF_NAMES[half]}`;
}

/** “sleeve cap in front”. */
const edgeWords = (role: EdgeRole, half: Half | undefined): string =>
  half ? `${EDGE_NAMES[role]} ${HALF_NAMES[half]}` : EDGE_NAMES[role];

/** What was said of the pieces, with one doubt answered; null leaves it open. */
export function withDoubtAnswer(said: Said, doubt: Doubt, answer: DoubtAnswer | null): Said {
  const own = said[doubt.piece] ?? {};
  const told = answer ? { role: answer.role, ...(answer.half ? { half: answer.half } : {}) } : { open: true };
  const part = doubt.edge === undefined ? told : { edges: { ...own.edges, [doubt.edge]: told } };
  return { ...said, [doubt.piece]: { ...own, ...(part as PieceCorrection) } };
}
