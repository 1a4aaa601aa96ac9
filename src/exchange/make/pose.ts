import type { Motion } from '../../geometry/index.ts';
import type { ProposedPiece } from '../find/proposal.ts';
import type { Corrections } from './corrections.ts';

/** A piece is turned by itself only where it is this sure what it is. */
const SURE = 0.6;

/** How a piece lies, seen from our custom (grain upright, centre at the smaller x): turned over, and turned so many quarters to the left. */
export interface Lies {
  readonly over: boolean;
  readonly quarter: number;
}

/**
 * How a piece was drawn, as said or as found. One that is cut once and not on the fold is never turned over by itself: that would be the other side
 * of the body.
 */
export function liesAs(piece: ProposedPiece, corrections: Corrections): Lies {
  const said = corrections.pieces?.[piece.id];
  const { mirrored, count } = said?.cut ?? piece.cut;
  const sure = piece.drawn !== undefined && (piece.confidence ?? 0) >= SURE;
  const twins = mirrored || count > 1 || piece.edges.some((edge) => edge.kind === 'fold');
  return {
    over: said?.mirror ?? (sure && twins && piece.drawn!.over),
    quarter: sure ? piece.drawn!.quarter : 0,
  };
}

/** Turns a piece the way of our custom about the origin. */
export function uprightMotion(piece: ProposedPiece, { over, quarter }: Lies): Motion {
  const { x, y } = piece.grain.direction;
  const angle = Math.atan2(x, y) - (quarter * Math.PI) / 2;
  // Turning over flips x first, so that all leans the other way then.
  return { angle: over ? -angle : angle, dx: 0, dy: 0, ...(over ? { mirror: true } : {}) };
}
