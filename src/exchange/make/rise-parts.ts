import { distance, pathAt, pathEnd, pathLength, pathStart, shareAtPlace } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import { cutEdge } from '../find/cut-edge.ts';
import type { Proposal, ProposedEdge, ProposedPiece } from '../find/proposal.ts';
import type { Corrections } from './corrections.ts';
import { crossingShare } from './crossing.ts';
import { withCuts } from './cut-chain.ts';

/** The seat seam is straight down to so near above or below the hip line, mm (common practice of drafting); else it is cut at the line itself. */
const NEAR_HIP_MM = 60;
/** What leaves a straight line by more is no longer part of it, mm. */
const STRAIGHT_MM = 0.03;
/** The joint of two curves so near to where the line leaves the straight is where it was drawn to leave it, mm. */
const JOINT_MM = 20;
const LOOKS = 400;

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
    const at = rise.paths.map((path, k) => curveBegins(path, down, crossingShare(path, hip.paths[k]!)));
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

/** Whether the edge before (-1) or after (1) the rise is a waist. */
function atWaist(piece: ProposedPiece, rise: ProposedEdge, way: 1 | -1): boolean {
  const n = piece.edges.length;
  return piece.edges[(piece.edges.indexOf(rise) + way + n) % n]!.role === 'waist';
}

/** A fly that ends above the crotch curve has parted the two already. */
const fromWaist = (piece: ProposedPiece, rise: ProposedEdge): boolean =>
  atWaist(piece, rise, -1) || atWaist(piece, rise, 1);

/** The share of the joint next to a place, where one is near; else the place itself. */
function jointNear(path: Path, share: number): number {
  const long = pathLength(path);
  const joints = Array.from({ length: (path.length - 1) / 3 - 1 }, (_, i) =>
    shareAtPlace(path, { cubic: i, t: 1 }),
  );
  const near = joints.toSorted((a, b) => Math.abs(a - share) - Math.abs(b - share))[0];
  return near !== undefined && Math.abs(near - share) * long <= JOINT_MM ? near : share;
}

/** Share at which the straight seam from the waist ends, where that is near the hip line; else where it crosses that line; null where it does neither. */
function curveBegins(path: Path, down: boolean, hip: number | null): number | null {
  if (hip === null) return null;
  const from = down ? pathStart(path) : pathEnd(path);
  const at = (i: number): number => (down ? i / LOOKS : 1 - i / LOOKS);
  let last = 0;
  for (let i = 2; i < LOOKS; i++) {
    const to = pathAt(path, at(i));
    const long = distance(from, to);
    const off = [0.25, 0.5, 0.75].map((share) => {
      const p = pathAt(path, at(i * share));
      return Math.abs((to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x)) / long;
    });
    if (Math.max(...off) > STRAIGHT_MM) break;
    last = i;
  }
  const share = jointNear(path, at(last));
  return Math.abs(share - hip) * pathLength(path) <= NEAR_HIP_MM ? share : hip;
}
