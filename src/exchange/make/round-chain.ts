import { pathLength } from '../../geometry/index.ts';
import { edgeAt, halfOf, middleOf, pieceAt } from '../../garment/index.ts';
import type { EdgeRef, NestedPiece, Seam } from '../../garment/index.ts';

/** Another beginning must bring the notches nearer to what they mark by more than this in all, mm. */
const BETTER_MM = 5;
/** Three teeth mark the centre back (common practice); away from it they count as this far off, mm. */
const NOT_CENTRE_BACK_MM = 40;

interface Corner {
  /** mm along the chain. */
  readonly at: number;
  readonly centreBack: boolean;
}

/**
 * What goes all round is walked from somewhere: lengths alone do not say where a band begins. The chain it is sewn to is turned so that the band's notches
 * meet the corners of the pieces (shoulders, sides, centres), three teeth the centre back.
 */
export function roundChains(pieces: readonly NestedPiece[], seams: readonly Seam[]): Seam[] {
  return seams.map((seam) => {
    const [own, other] = seam.a.length === 1 ? [seam.a, seam.b] : [seam.b, seam.a];
    if (own.length !== 1 || other.length < 3 || !goesRound(other)) return seam;
    const best = bestStart({ pieces }, own[0]!, other);
    if (!best) return seam;
    return own === seam.a ? { ...seam, b: best } : { ...seam, a: best };
  });
}

/** Every edge walked there and back: both halves of the garment are on it. */
const goesRound = (chain: readonly EdgeRef[]): boolean =>
  chain.every((ref) =>
    chain.some(
      (other) =>
        other.piece === ref.piece &&
        other.edge === ref.edge &&
        Boolean(other.backwards) !== Boolean(ref.backwards),
    ),
  );

type Pieces = { readonly pieces: readonly NestedPiece[] };

function bestStart(garment: Pieces, own: EdgeRef, chain: readonly EdgeRef[]): EdgeRef[] | null {
  const band = edgeAt(garment, own)?.edge;
  if (!band || band.notches.length === 0) return null;
  const m = middleOf(band.path.length);
  const long = pathLength(band.path[m]!);
  const notches = band.notches.map((n) => ({
    at: (own.backwards ? 1 - n.at[m]! : n.at[m]!) * long,
    count: n.count,
  }));
  const costs = chain.map((_, i) => {
    const turned = [...chain.slice(i), ...chain.slice(0, i)];
    const corners = cornersOf(garment, turned, long);
    const cost = notches.reduce(
      (sum, notch) =>
        sum +
        Math.min(
          ...corners.map(
            ({ at, centreBack }) =>
              Math.abs(at - notch.at) + (notch.count === 3 && !centreBack ? NOT_CENTRE_BACK_MM : 0),
          ),
        ),
      0,
    );
    return { turned, cost };
  });
  const best = costs.reduce((a, b) => (b.cost < a.cost - 1e-6 ? b : a));
  return best.cost < costs[0]!.cost - BETTER_MM ? best.turned : null;
}

/** Where two edges of the chain come together, from its start, scaled to the band's length. */
function cornersOf(garment: Pieces, chain: readonly EdgeRef[], long: number): Corner[] {
  const lengths = chain.map((ref) => {
    const edge = edgeAt(garment, ref)?.edge;
    return edge ? pathLength(edge.path[middleOf(edge.path.length)]!) : 0;
  });
  const whole = lengths.reduce((sum, one) => sum + one, 0);
  let at = 0;
  return chain.map((ref, i) => {
    const before = chain[(i + chain.length - 1) % chain.length]!;
    const piece = pieceAt(garment, ref.piece);
    const corner = {
      at: (at / Math.max(1e-9, whole)) * long,
      centreBack:
        before.piece === ref.piece &&
        before.edge === ref.edge &&
        piece !== undefined &&
        halfOf(piece) === 'back',
    };
    at += lengths[i]!;
    return corner;
  });
}
