import { pageError } from '../words/fault.ts';
import {
  assemblyPicture,
  guessGarment,
  liesAs,
  patternFrom,
  proposalSummary,
  readDrawing,
  recognise,
  rolesAsTold,
  uprightMotion,
  type Asks,
  type Assembly,
  type AssemblyCorrections,
  type Corrections,
  type Drawing,
  type GarmentGuess,
  type Progress,
  type Proposal,
  type ProposalSummary,
} from '../../exchange/index.ts';
import { edgeName, middleOf } from '../../garment/index.ts';
import type {
  EdgeKind,
  EdgeRole,
  Finding,
  Half,
  Pattern,
  Phrase,
  PieceHalf,
  PieceRole,
} from '../../garment/index.ts';
import { pathMove, type Path } from '../../geometry/index.ts';
import { answerCalls } from '../call/index.ts';

/** A proposed piece as drawn on the file's sheet, for the person to say yes to. */
export interface FoundPiece {
  readonly id: string;
  readonly name: string;
  readonly words: readonly string[];
  readonly evidence: Phrase;
  /** Edges per size, sheet mm, y up. */
  readonly paths: readonly (readonly Path[])[];
  /** It repeats another piece, and is what that is. */
  readonly follows: boolean;
  readonly found: FoundRole<PieceRole, PieceHalf>;
  readonly edges: readonly FoundEdge[];
}

/** What something is thought to be, how surely (0..1), why, and what else it may be. */
export interface FoundRole<Role, Half> {
  readonly role?: Role;
  readonly half?: Half;
  readonly confidence: number;
  readonly because: Phrase | null;
  readonly otherwise: readonly { readonly role: Role; readonly half?: Half }[];
}
export interface FoundEdge {
  readonly id: string;
  readonly name: string;
  readonly kind: EdgeKind;
  readonly found: FoundRole<EdgeRole, Half>;
  /** In the middle size, laid as it is thought to be worn: grain upright, centre at the smaller x. mm, y up. */
  readonly worn: Path;
}
export interface Found {
  readonly name: string;
  readonly summary: ProposalSummary;
  readonly proven: boolean;
  /** What only a person can say, with what the file says of it. */
  readonly asks: Asks;
  /** Stitching lines are drawn inside the cutting lines. */
  readonly doubled: boolean;
  /** The kind of garment it is taken for, and why. */
  readonly garment: GarmentGuess;
  /** How the pages lie together; null for a file of one sheet. */
  readonly tiles: Tiles | null;
  readonly sizes: readonly { readonly id: string; readonly label: string; readonly evidence: Phrase }[];
  readonly pieces: readonly FoundPiece[];
  readonly seams: readonly FoundSeam[];
}
export interface FoundSeam {
  readonly id: string;
  readonly say: string;
  readonly evidence: Phrase;
  readonly score: number;
  readonly rank: number;
}

/** Pages put together, as a picture to confirm or correct. Pages are counted from 0. */
export interface Tiles extends Pick<Assembly, 'cells' | 'columns' | 'rows' | 'quality' | 'by'> {
  /** SVG text. */
  readonly picture: string;
  readonly pages: number;
  /** Pages with lines on them. */
  readonly drawn: readonly number[];
}

/** What to read, and what a person has said about it. */
export interface ReadAsk {
  readonly bytes: Uint8Array;
  readonly name: string;
  readonly scaleBy?: string;
  readonly assembly?: AssemblyCorrections;
}

let drawing: Drawing | null = null;
let proposal: Proposal | null = null;

function tilesOf(read: Drawing, assembly: Assembly): Tiles | null {
  if (read.pages.length < 2) return null;
  const { cells, columns, rows, quality, by } = assembly;
  return {
    cells,
    columns,
    rows,
    quality,
    by,
    pages: read.pages.length,
    drawn: [...new Set(read.strokes.map((s) => s.page))].sort((a, b) => a - b),
    picture: assemblyPicture(read, assembly),
  };
}

/** Only what is known, and how well. */
function foundRole<Role, Half>(one: Partial<FoundRole<Role, Half>>): FoundRole<Role, Half> {
  const { role, half, confidence = role ? 1 : 0, because = null, otherwise = [] } = one;
  return { confidence, because, otherwise, ...(role ? { role } : {}), ...(half ? { half } : {}) };
}

function foundPieces(p: Proposal): FoundPiece[] {
  return p.pieces.map((x) => {
    const upright = uprightMotion(x, liesAs(x, {}));
    return {
      id: x.id,
      name: x.name,
      words: x.words,
      evidence: x.evidence,
      paths: p.sizes.map((_, k) => x.edges.map((e) => e.paths[k]!)),
      follows: p.followers.some((f) => f.piece === x.id),
      found: foundRole(x),
      edges: x.edges.map((e) => ({
        id: e.id,
        name: e.name,
        kind: e.kind,
        found: foundRole(e),
        worn: pathMove(e.paths[middleOf(p.sizes.length)]!, upright),
      })),
    };
  });
}

function foundSeams(p: Proposal): FoundSeam[] {
  const say = (refs: Proposal['seams'][number]['a']): string => refs.map((r) => edgeName(p, r)).join(' + ');
  return p.seams.map(({ id, a, b, evidence, score, rank }) => ({
    id,
    say: `${say(a)} to ${say(b)}`,
    evidence,
    score,
    rank,
  }));
}

const doings = {
  read: async ({ bytes, name, scaleBy, assembly }: ReadAsk, tell: (p: Progress) => void): Promise<Found> => {
    const options = { onProgress: tell, clock: () => performance.now() };
    // Corrections are about what has been read: the file itself is read once.
    if (drawing?.name !== name) drawing = await readDrawing(bytes, name, options);
    proposal = recognise(drawing, {
      ...options,
      ...(scaleBy ? { scaleBy } : {}),
      ...(assembly ? { assembly } : {}),
    });
    const p = proposal;
    return {
      name: p.name,
      summary: proposalSummary(p),
      proven: p.scale.proven,
      asks: p.asks,
      doubled: p.pieces.some((x) => x.edges.some((e) => e.inside !== undefined)),
      garment: guessGarment(p),
      tiles: tilesOf(drawing, p.assembly),
      sizes: p.sizes.map(({ id, label, evidence }) => ({ id, label, evidence })),
      pieces: foundPieces(p),
      seams: foundSeams(p),
    };
  },
  /** Pieces and seams found again with what a person said of some of them, and the garment they then make. */
  again: (corrections: Corrections): Pick<Found, 'pieces' | 'seams' | 'garment'> => {
    if (!proposal) throw pageError('file-unread');
    const told = rolesAsTold(proposal, corrections);
    return { pieces: foundPieces(told), seams: foundSeams(told), garment: guessGarment(told) };
  },
  make: (corrections: Corrections): { pattern: Pattern; findings: readonly Finding[] } => {
    if (!proposal) throw pageError('file-unread');
    return patternFrom(proposal, corrections);
  },
};
export type ReadDoings = typeof doings;

answerCalls(doings);
