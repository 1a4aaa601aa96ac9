import {
  DxfError,
  patternFrom,
  proposalSummary,
  ReadError,
  readFile,
  type Corrections,
  type Progress,
  type Proposal,
  type ProposalSummary,
} from '../../exchange/index.ts';
import type { Finding, Pattern } from '../../garment/index.ts';
import type { Path } from '../../geometry/index.ts';
import { answerCalls } from '../worker/call.ts';

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

let proposal: Proposal | null = null;

const doings = {
  read: async (
    { bytes, name, scaleBy }: { bytes: Uint8Array; name: string; scaleBy?: string },
    tell: (p: Progress) => void,
  ): Promise<Found> => {
    try {
      proposal = await readFile(bytes, name, {
        ...(scaleBy ? { scaleBy } : {}),
        onProgress: tell,
        clock: () => performance.now(),
      });
    } catch (error) {
      if (error instanceof ReadError || error instanceof DxfError)
        throw new Error(error.message, { cause: error });
      throw error;
    }
    const p = proposal;
    const say = (refs: Proposal['seams'][number]['a']): string =>
      refs
        .map(
          (r) =>
            `${p.pieces.find((x) => x.id === r.piece)?.name ?? r.piece}, ${p.pieces.find((x) => x.id === r.piece)?.edges.find((e) => e.id === r.edge)?.name ?? r.edge}`,
        )
        .join(' + ');
    return {
      name: p.name,
      summary: proposalSummary(p),
      proven: p.scale.proven,
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
