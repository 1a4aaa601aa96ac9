import { pathLength } from '../geometry/index.ts';
import type { Garment } from './pattern.ts';
import type { Edge, Nesting, PieceId, PieceOf } from './piece.ts';
import type { EdgeRef } from './seam.ts';

/** An edge in its piece. */
export interface FoundEdge<N extends Nesting = 'one'> {
  readonly piece: PieceOf<N>;
  readonly edge: Edge<N>;
  /** Which of the piece's edges it is: also the corner it starts from. */
  readonly index: number;
}

/** A pattern's pieces, or a garment's. */
interface Pieces<N extends Nesting> {
  readonly pieces: readonly PieceOf<N>[];
}

/** As much of a piece as its name and its edges' names: found pieces that are no pattern yet have it too. */
interface NamedPiece {
  readonly id: PieceId;
  readonly name: string;
  readonly edges: readonly { readonly id: string; readonly name: string }[];
}

/** The piece of that id, of a garment, a pattern or a drawing; undefined where it has none. Every change makes a new list, so that looking along it is cheaper than an index of it. */
export const pieceAt = <P extends { readonly id: PieceId }>(
  { pieces }: { readonly pieces: readonly P[] },
  id: PieceId,
): P | undefined => pieces.find((p) => p.id === id);

/** The edge a ref speaks of; undefined where the garment has none. */
export function edgeAt<N extends Nesting>(garment: Pieces<N>, ref: EdgeRef): FoundEdge<N> | undefined {
  const piece = pieceAt(garment, ref.piece);
  const index = piece?.edges.findIndex((e) => e.id === ref.edge) ?? -1;
  return piece && index >= 0 ? { piece, edge: piece.edges[index]!, index } : undefined;
}

/** A notch as people read its id: `armhole front`. */
export const notchName = (id: string): string => id.replaceAll('-', ' ');

/** An edge as its pattern names it, for people: `Centre front, princess seam`. Ids where there is no such piece or edge. */
export function edgeName(
  named: { readonly pieces: readonly NamedPiece[] },
  ref: Pick<EdgeRef, 'piece' | 'edge'>,
): string {
  const piece = pieceAt(named, ref.piece);
  const edge = piece?.edges.find((e) => e.id === ref.edge);
  return `${piece?.name ?? ref.piece}, ${edge?.name ?? ref.edge}`;
}

/** Edges a chain names that the garment does not have: what must be asked first where such a thing can be. */
export const missingEdges = (garment: Garment, chain: readonly EdgeRef[]): EdgeRef[] =>
  chain.filter((ref) => !edgeAt(garment, ref));

/**
 * The edges of a chain in walking order.
 * A pattern is checked at the door, and whatever changes a piece changes its seams with it; a chain with a missing edge is therefore a fault of ours and no case to reckon with.
 * @throws RangeError naming the edge that is missing
 */
export function chainEdges(
  garment: Garment,
  chain: readonly EdgeRef[],
): (FoundEdge & { readonly ref: EdgeRef })[] {
  return chain.map((ref) => {
    const found = edgeAt(garment, ref);
    if (!found) throw new RangeError(`The garment has no edge ${ref.edge} of ${ref.piece}.`);
    return { ...found, ref };
  });
}

/** Length of a chain, mm. @throws RangeError as `chainEdges` */
export const chainLength = (garment: Garment, chain: readonly EdgeRef[]): number =>
  chainEdges(garment, chain).reduce((sum, { edge }) => sum + pathLength(edge.path), 0);

/**
 * Where the notches of a chain stand, mm walked from its start. Of two like-named ones the first, which is the one that meets: a mirrored second half
 * repeats it. @throws RangeError as `chainEdges`
 */
export function chainNotches(garment: Garment, chain: readonly EdgeRef[]): Map<string, number> {
  const out = new Map<string, number>();
  let walked = 0;
  for (const { edge, ref } of chainEdges(garment, chain)) {
    const own = pathLength(edge.path);
    for (const notch of edge.notches) {
      if (!out.has(notch.id)) out.set(notch.id, walked + (ref.backwards ? 1 - notch.at : notch.at) * own);
    }
    walked += own;
  }
  return out;
}
