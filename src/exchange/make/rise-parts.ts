import { pathLength } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import { cutEdge } from '../find/cut-edge.ts';
import type { Proposal, ProposedEdge, ProposedPiece } from '../find/proposal.ts';
import type { Corrections } from './corrections.ts';
import { crossingShare } from './crossing.ts';
import { withCuts } from './cut-chain.ts';
import { straightEnd } from './straight-end.ts';

/** The seat seam is straight down to so near above or below the hip line, mm (common practice of drafting); else it is cut at the line itself. */
const NEAR_HIP_MM = 60;

/**
 * A seat seam and the crotch curve drawn as one line are cut where the straight seam ends and the curve begins, about the hip line: what is done to the
 * crotch runs out there, not at the waist. Trousers without a drawn hip line keep the one edge.
 */
export function withRiseParts(
  proposal: Proposal,
  said: Corrections,
): { readonly proposal: Proposal; readonly said: Corrections } {
  const cuts = new Map<string, readonly [string, string]>();
  const pieces = proposal.pieces.map((piece) => {
    const rises = piece.edges.filter((edge) => edge.role === 'rise');
    const rise = rises[0];
    const hip = piece.lines.find((line) => line.kind === 'level' && line.level === 'hip');
    if (rises.length !== 1 || !rise || !hip || !fromWaist(piece, rise)) return piece;
    const down = atWaist(piece, rise, -1);
    const crossed = rise.paths.map((path, k) => crossingShare(path, hip.paths[k]!));
    const at = curveBegins(rise.paths, down, crossed);
    if (!at) return piece;
    const { kind, evidence } = rise;
    const made = cutEdge(piece, rise, at, [
      { kind, evidence },
      { kind, evidence },
    ]);
    cuts.set(`${piece.id} ${rise.id}`, made.ids);
    return made.piece;
  });
  return withCuts(proposal, said, pieces, cuts);
}

/** Whether the edge before (-1) or after (1) the rise is a waist. */
function atWaist(piece: ProposedPiece, rise: ProposedEdge, way: 1 | -1): boolean {
  const n = piece.edges.length;
  return piece.edges[(piece.edges.indexOf(rise) + way + n) % n]!.role === 'waist';
}

/** A fly that ends above the crotch curve has parted the two already. */
const fromWaist = (piece: ProposedPiece, rise: ProposedEdge): boolean =>
  atWaist(piece, rise, -1) || atWaist(piece, rise, 1);

/** Shares at which the straight seam from the waist ends, where that is near the hip line in every size; else where it crosses that line; null where in one of them it does not. */
function curveBegins(
  paths: readonly Path[],
  down: boolean,
  hip: readonly (number | null)[],
): readonly number[] | null {
  if (!hip.every((share) => share !== null)) return null;
  const ends = paths.map((path) => straightEnd(path, !down));
  const near = (share: number | null, k: number): share is number =>
    share !== null && Math.abs(share - hip[k]!) * pathLength(paths[k]!) <= NEAR_HIP_MM;
  return ends.every(near) ? ends : hip;
}
