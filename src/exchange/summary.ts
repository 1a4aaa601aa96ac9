import type { Finding } from '../garment/index.ts';
import type { Asks } from './find/ask.ts';
import type { Proposal } from './find/proposal.ts';

/** What `read` prints: mm and mm². Seams name their edges as `piece.edge`, several with ` + `. */
export interface ProposalSummary {
  readonly unitsFrom: string;
  readonly scale: string;
  readonly assembly: string;
  readonly pieces: readonly {
    readonly name: string;
    readonly sizes: readonly {
      readonly size: string;
      readonly area: number;
      readonly edges: readonly { readonly name: string; readonly length: number }[];
    }[];
    readonly grain: string;
    readonly notches: number;
    readonly evidence: string;
  }[];
  /** First choices, best first, then the alternatives. */
  readonly seams: readonly {
    readonly a: string;
    readonly b: string;
    readonly score: number;
    readonly rank: number;
    readonly evidence: string;
  }[];
  /** What only a person can say, what decides most first; `offered` is what the file itself says, null where it says nothing. Lengths in mm. */
  readonly asks: readonly {
    readonly ask: keyof Asks;
    readonly offered: unknown;
    readonly evidence: string;
  }[];
  readonly findings: readonly Finding[];
}

const round = (value: number): number => Math.round(value * 100) / 100;

/** The proposal as plain data for people and programs. */
export function proposalSummary(proposal: Proposal): ProposalSummary {
  const chain = (refs: Proposal['seams'][number]['a']): string =>
    refs
      .map((ref) => {
        const piece = proposal.pieces.find((one) => one.id === ref.piece);
        const edge = piece?.edges.find((one) => one.id === ref.edge);
        return `${piece?.name ?? ref.piece}.${edge?.name ?? ref.edge}`;
      })
      .join(' + ');
  return {
    unitsFrom: proposal.unitsFrom,
    scale: proposal.scale.evidence,
    assembly: proposal.assembly.evidence,
    pieces: proposal.pieces.map((piece) => ({
      name: piece.name,
      sizes: proposal.sizes.map((size, k) => ({
        size: size.label,
        area: round(piece.areas[k]!),
        edges: piece.edges.map((edge) => ({ name: edge.name, length: round(edge.lengths[k]!) })),
      })),
      grain: piece.grain.evidence,
      notches: piece.edges.reduce((sum, edge) => sum + edge.notches.length, 0),
      evidence: piece.evidence,
    })),
    seams: proposal.seams
      .toSorted((a, b) => a.rank - b.rank || b.score - a.score)
      .map((seam) => ({
        a: chain(seam.a),
        b: chain(seam.b),
        score: seam.score,
        rank: seam.rank,
        evidence: seam.evidence,
      })),
    asks: (Object.keys(proposal.asks) as (keyof Asks)[]).map((ask) => ({ ask, ...proposal.asks[ask] })),
    findings: proposal.findings,
  };
}
