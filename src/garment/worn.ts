import type { BodySide, EdgeKind, PieceOf, Nesting, Worn, WornSide } from './piece.ts';

/** What the verbs below ask of a piece, nested or drawn. */
type Parts = Pick<PieceOf<Nesting>, 'worn'>;
type Outlined = Parts & { readonly edges: readonly { readonly kind: EdgeKind }[] };

const SIDES: readonly [BodySide, BodySide] = ['left', 'right'];
/** The other side of the body. */
export const otherSide = (side: BodySide): BodySide => (side === 'left' ? 'right' : 'left');

/** One part, cut as it is drawn: across the middle or of no side, or worn on one. */
export const wornOnce = (side: WornSide = 'both'): readonly Worn[] => wornTimes(1, side);

/** So many parts, all cut as they are drawn. */
export const wornTimes = (count: number, side: WornSide = 'both'): readonly Worn[] =>
  Array.from({ length: count }, () => ({ side, face: 'up' }));

/**
 * A left and a right, or several such pairs. Of two pairs the second lies inside the first (a yoke and its inside, the two layers of
 * a pocket bag): right side to the body, so that each side wears one of either face.
 * @param drawn the side that the outline is drawn for
 */
export const wornPair = (drawn: BodySide = 'left', pairs = 1): readonly Worn[] =>
  Array.from({ length: pairs }, (_, k) => (k % 2 === 0 ? drawn : otherSide(drawn))).flatMap(
    (side): Worn[] => [
      { side, face: 'up' },
      { side: otherSide(side), face: 'down' },
    ],
  );

/** Whether the outline is half of its part: it is cut on a fold. */
export const isOnFold = (piece: Pick<Outlined, 'edges'>): boolean =>
  piece.edges.some((e) => e.kind === 'fold');

/** How many halves and wholes of the garment one drawn outline stands for (docs/architecture.md, "Times cut"). */
export const timesCut = (piece: Outlined): number => piece.worn.length * (isOnFold(piece) ? 2 : 1);

/** How many parts are cut with the outline turned over. */
export const timesTurned = (piece: Parts): number => piece.worn.filter((w) => w.face === 'down').length;

/** The one side of the body that all its parts are worn on, or undefined: a pair, across the middle, of no side. */
export function sideOf(piece: Parts): BodySide | undefined {
  return SIDES.find((side) => piece.worn.length > 0 && piece.worn.every((w) => w.side === side));
}

/**
 * The side that the outline, or the half of it that is drawn at a fold, is drawn for. Seen from outside with the centre at the smaller x, a front
 * shows the wearer's left, a back the right.
 */
export function drawnSide(piece: Parts & Pick<PieceOf<Nesting>, 'half'>): BodySide {
  const up = piece.worn.find((w) => w.face === 'up' && w.side !== 'both')?.side;
  if (up === 'left' || up === 'right') return up;
  return piece.half === 'back' ? 'right' : 'left';
}
