import {
  nearestPlace,
  pathEnd,
  pathLineIntersections,
  pathStart,
  shareAtPlace,
} from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import { cutEdge } from '../find/cut-edge.ts';
import type { Proposal, ProposedEdge, ProposedPiece } from '../find/proposal.ts';
import type { Corrections } from './corrections.ts';
import { withCuts } from './cut-chain.ts';

/**
 * A seat seam and the crotch curve drawn as one line are cut where they cross the hip line: what is done to the crotch runs out there, not at the waist.
 * Trousers without a drawn hip line keep the one edge.
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
    const at = rise.paths.map((path, k) => crossing(path, hip.paths[k]!));
    if (!at.every((share): share is number => share !== null)) return piece;
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

/** Whether one of its ends lies at the waist: a fly that ends above the crotch curve has parted them already. */
function fromWaist(piece: ProposedPiece, rise: ProposedEdge): boolean {
  const n = piece.edges.length;
  const i = piece.edges.indexOf(rise);
  return [piece.edges[(i + n - 1) % n]!, piece.edges[(i + 1) % n]!].some((edge) => edge.role === 'waist');
}

/** Share at which the edge crosses the line, prolonged; null where it does not, or not once. */
function crossing(edge: Path, line: Path): number | null {
  const hits = pathLineIntersections(edge, pathStart(line), pathEnd(line));
  return hits.length === 1 ? shareAtPlace(edge, nearestPlace(edge, hits[0]!.point).place) : null;
}
