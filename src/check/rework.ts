import type { DrawnPiece, Edge, Garment, Moves } from '../garment/index.ts';
import { reshapePiece } from '../garment/index.ts';
import {
  cubicCount,
  dot,
  lengthAtPlace,
  pathEnd,
  pathIsStraight,
  pathLength,
  pathStart,
  scale,
  unit,
} from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';

/** A corner's move dies out along an edge no nearer than this, so that it never shows as a kink. */
const TAPER_MM = 40;

/** The garment with one piece in place of its former self. */
export function withPiece(garment: Garment, piece: DrawnPiece): Garment {
  return { ...garment, pieces: garment.pieces.map((p) => (p.id === piece.id ? piece : p)) };
}

/** The piece with one edge in place of its former self. */
export function withEdge(piece: DrawnPiece, index: number, edge: Edge<'one'>): DrawnPiece {
  return { ...piece, edges: piece.edges.map((e, i) => (i === index ? edge : e)) };
}

/**
 * One corner moved, both its edges following: straight ones stay straight, on curved ones the move dies out at the first joint beyond
 * TAPER_MM (at the far corner where there is none), so that truing adds no cubics. A corner on a fold only moves along the fold.
 */
export function moveCorner(piece: DrawnPiece, corner: number, by: Point): DrawnPiece {
  const n = piece.edges.length;
  const before = piece.edges[(corner + n - 1) % n]!;
  const after = piece.edges[corner]!;
  let move = by;
  for (const edge of [before, after]) {
    if (edge.kind !== 'fold') continue;
    const along = unit({
      x: pathEnd(edge.path).x - pathStart(edge.path).x,
      y: pathEnd(edge.path).y - pathStart(edge.path).y,
    });
    move = scale(along, dot(move, along));
  }
  const inner: Map<string, readonly { at: number; by: Point }[]> = new Map();
  const still = (edge: Edge<'one'>, fromEnd: boolean): void => {
    if (edge.kind === 'dart' || edge.kind === 'fold' || pathIsStraight(edge.path)) return;
    const at = stillAt(edge.path, fromEnd);
    if (at !== undefined) inner.set(edge.id, [{ at, by: { x: 0, y: 0 } }]);
  };
  still(before, true);
  still(after, false);
  const moves: Moves = { corners: new Map([[corner, move]]), inner };
  return reshapePiece(piece, moves);
}

/** Share of the path at its first joint at least TAPER_MM from that end; undefined where it has none. */
function stillAt(path: Path, fromEnd: boolean): number | undefined {
  const whole = pathLength(path);
  const count = cubicCount(path);
  for (let k = 1; k < count; k++) {
    const joint = fromEnd ? count - k : k;
    const along = lengthAtPlace(path, { cubic: joint - 1, t: 1 });
    if ((fromEnd ? whole - along : along) >= TAPER_MM) return along / whole;
  }
  return undefined;
}
