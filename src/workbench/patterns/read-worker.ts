import {
  assemblyPicture,
  guessGarment,
  patternFrom,
  proposalSummary,
  readDrawing,
  recognise,
  type Asked,
  type Asks,
  type Assembly,
  type AssemblyCorrections,
  type Corrections,
  type Drawing,
  type Progress,
  type Proposal,
  type ProposalSummary,
} from '../../exchange/index.ts';
import { edgeName } from '../../garment/index.ts';
import type { Finding, GarmentKind, Pattern } from '../../garment/index.ts';
import type { Path } from '../../geometry/index.ts';
import { answerCalls } from '../call/index.ts';

/** A proposed piece as drawn on the file's sheet, for the person to say yes to. */
export interface FoundPiece {
  readonly id: string;
  readonly name: string;
  readonly words: readonly string[];
  readonly evidence: string;
  /** Edges per size, sheet mm, y up. */
  readonly paths: readonly (readonly Path[])[];
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
  readonly garment: Asked<GarmentKind> & { readonly offered: GarmentKind };
  /** How the pages lie together; null for a file of one sheet. */
  readonly tiles: Tiles | null;
  readonly sizes: readonly { readonly id: string; readonly label: string; readonly evidence: string }[];
  readonly pieces: readonly FoundPiece[];
  readonly seams: readonly {
    readonly id: string;
    readonly say: string;
    readonly evidence: string;
    readonly score: number;
    readonly rank: number;
  }[];
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
    const say = (refs: Proposal['seams'][number]['a']): string => refs.map((r) => edgeName(p, r)).join(' + ');
    return {
      name: p.name,
      summary: proposalSummary(p),
      proven: p.scale.proven,
      asks: p.asks,
      doubled: p.pieces.some((x) => x.edges.some((e) => e.inside !== undefined)),
      garment: guessGarment(p),
      tiles: tilesOf(drawing, p.assembly),
      sizes: p.sizes.map(({ id, label, evidence }) => ({ id, label, evidence })),
      pieces: p.pieces.map((x) => ({
        id: x.id,
        name: x.name,
        words: x.words,
        evidence: x.evidence,
        paths: p.sizes.map((_, k) => x.edges.map((e) => e.paths[k]!)),
      })),
      seams: p.seams.map((s) => ({
        id: s.id,
        say: `${say(s.a)} to ${say(s.b)}`,
        evidence: s.evidence,
        score: s.score,
        rank: s.rank,
      })),
    };
  },
  make: (corrections: Corrections): { pattern: Pattern; findings: readonly Finding[] } => {
    if (!proposal) throw new Error('Nothing has been read yet.');
    return patternFrom(proposal, corrections);
  },
};
export type ReadDoings = typeof doings;

answerCalls(doings);
