import { reasons } from './words/evidence-table.ts';
import { seamRole, pieceAt } from '../garment/index.ts';
import type {
  BodySide,
  EdgeRole,
  Finding,
  Half,
  Phrase,
  PieceHalf,
  PieceRole,
  SignRole,
} from '../garment/index.ts';
import type { Asks } from './find/ask.ts';
import type { Proposal, ProposedEdge } from './find/proposal.ts';

/** What `read` prints, before it is said: mm and mm². Seams name their edges as `piece.edge`, several with ` + `. */
export interface ProposalSummary {
  readonly unitsFrom: Phrase;
  readonly scale: Phrase;
  readonly assembly: Phrase;
  readonly pieces: readonly {
    readonly name: string;
    /** What it is and where it is worn, how sure that is (0..1); absent where unknown. */
    readonly role?: PieceRole;
    readonly half?: PieceHalf;
    readonly confidence?: number;
    /** The side of the body it is worn on, where its words say that it is one only. */
    readonly side?: BodySide;
    readonly sizes: readonly {
      readonly size: string;
      readonly area: number;
      readonly edges: readonly {
        readonly name: string;
        readonly length: number;
        readonly role?: EdgeRole;
        readonly also?: EdgeRole;
        readonly half?: Half;
        readonly confidence?: number;
        readonly evidence: Phrase;
        /** Those of its notches of which it is known what they are for. */
        readonly notches?: readonly {
          readonly role: SignRole;
          readonly teeth: number;
          readonly confidence?: number;
          readonly evidence: Phrase;
        }[];
      }[];
    }[];
    readonly grain: Phrase;
    readonly notches: number;
    readonly evidence: Phrase;
  }[];
  /** First choices, best first, then the alternatives. */
  readonly seams: readonly {
    readonly a: string;
    readonly b: string;
    /** By the roles of its edges. */
    readonly role?: EdgeRole;
    readonly score: number;
    readonly rank: number;
    readonly evidence: Phrase;
  }[];
  /** What only a person can say, what decides most first; `offered` is what the file itself says, null where it says nothing. Lengths in mm. */
  readonly asks: readonly {
    readonly ask: keyof Asks;
    readonly offered: unknown;
    readonly evidence: Phrase;
  }[];
  readonly findings: readonly Finding[];
}

type EdgeSummary = ProposalSummary['pieces'][number]['sizes'][number]['edges'][number];

const round = (value: number): number => Math.round(value * 100) / 100;

const roleOf = <R>(role: R | undefined): { role?: R } => (role === undefined ? {} : { role });

/** What is known of a piece or an edge, and nothing else. */
const rolesOf = <R, H>(one: {
  readonly role?: R;
  readonly also?: R;
  readonly half?: H;
  readonly confidence?: number;
}): { role?: R; also?: R; half?: H; confidence?: number } => ({
  ...roleOf(one.role),
  ...(one.also === undefined ? {} : { also: one.also }),
  ...(one.half === undefined ? {} : { half: one.half }),
  ...(one.confidence === undefined ? {} : { confidence: one.confidence }),
});

const notchesOf = ({ notches }: ProposedEdge): Pick<EdgeSummary, 'notches'> => {
  const known = notches.flatMap(({ role, count, confidence, evidence, because }) =>
    role === undefined
      ? []
      : [
          {
            role,
            teeth: count,
            ...(confidence === undefined ? {} : { confidence }),
            evidence: reasons([evidence, because]),
          },
        ],
  );
  return known.length > 0 ? { notches: known } : {};
};

/** The proposal as plain data for people and programs. */
export function proposalSummary(proposal: Proposal): ProposalSummary {
  const chain = (refs: Proposal['seams'][number]['a']): string =>
    refs
      .map((ref) => {
        const piece = pieceAt(proposal, ref.piece);
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
      ...rolesOf(piece),
      ...(piece.side === undefined ? {} : { side: piece.side }),
      sizes: proposal.sizes.map((size, k) => ({
        size: size.label,
        area: round(piece.areas[k]!),
        edges: piece.edges.map((edge) => ({
          name: edge.name,
          length: round(edge.lengths[k]!),
          ...rolesOf(edge),
          evidence: reasons([edge.evidence, edge.because]),
          ...notchesOf(edge),
        })),
      })),
      grain: piece.grain.evidence,
      notches: piece.edges.reduce((sum, edge) => sum + edge.notches.length, 0),
      evidence: reasons([piece.evidence, piece.because]),
    })),
    seams: proposal.seams
      .toSorted((a, b) => a.rank - b.rank || b.score - a.score)
      .map((seam) => ({
        a: chain(seam.a),
        b: chain(seam.b),
        ...roleOf(seamRole(proposal, seam)),
        score: seam.score,
        rank: seam.rank,
        evidence: seam.evidence,
      })),
    asks: (Object.keys(proposal.asks) as (keyof Asks)[]).map((ask) => ({ ask, ...proposal.asks[ask] })),
    findings: proposal.findings,
  };
}
