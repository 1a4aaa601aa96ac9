import { pathReverse } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece, Edge } from '../../garment/index.ts';

const over = (p: Point): Point => ({ x: -p.x, y: p.y });
const overPath = (path: Path): Path => path.map(over);

/**
 * The piece turned over (x flipped), its outline counter-clockwise again: edges run the other way and in the other order, darts' legs change places.
 * Turning it over twice gives the same coordinates.
 */
export function mirrorPiece(piece: DrawnPiece): DrawnPiece {
  const n = piece.edges.length;
  const edges = piece.edges
    .map((edge, i): Edge<'one'> => ({
      ...edge,
      path: pathReverse(overPath(edge.path)),
      from: piece.edges[(i + 1) % n]!.from,
      crossings: edge.crossings.map((c) => ({ ...c, at: 1 - c.at })).toReversed(),
      notches: edge.notches.map((c) => ({ ...c, at: 1 - c.at })),
    }))
    .toReversed();
  return {
    ...piece,
    edges,
    darts: piece.darts.map((d) => ({
      ...d,
      legs: [d.legs[1], d.legs[0]],
      foldToward: d.foldToward === 'first' ? 'second' : 'first',
    })),
    lines: piece.lines.map((l) => ({ ...l, path: overPath(l.path) })),
    marks: piece.marks.map((m) => ({ ...m, at: over(m.at) })),
  };
}
