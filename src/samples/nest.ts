import type { DrawnPiece, Edge, NestedPiece } from '../garment/index.ts';
import type { Path } from '../geometry/index.ts';

/** Kept digits: a micrometre, a hundredth of what the stored geometry promises; keeps the file short and the same on every machine. */
const MM = 1e3;
const SHARE = 1e7;
const round = (x: number, by: number): number => Math.round(x * by) / by + 0;
const kept = (path: Path): Path => path.map(({ x, y }) => ({ x: round(x, MM), y: round(y, MM) }));

/** What must be the same in every size for one topology to serve them all. */
const topology = (piece: DrawnPiece): string =>
  JSON.stringify([
    piece.id,
    piece.edges.map((e: Edge<'one'>) => [
      e.id,
      e.kind,
      e.from,
      e.path.length,
      e.crossings.map((c) => c.level),
      e.notches.map((n) => n.id),
    ]),
    piece.lines.map((l) => [l.id, l.path.length]),
    piece.marks.map((m) => m.id),
  ]);

/**
 * One nested piece out of the same piece drafted in each size, smallest first.
 * Throws RangeError when the sizes differ in anything but coordinates: the draft's rules have then flipped between sizes.
 */
function nest(sizes: readonly DrawnPiece[]): NestedPiece {
  const first = sizes[0];
  if (!first) throw new RangeError('a nest needs at least one size');
  const shape = topology(first);
  for (const piece of sizes) {
    if (topology(piece) !== shape)
      throw new RangeError(`${piece.name}: sizes differ\n${shape}\n${topology(piece)}`);
  }
  return {
    ...first,
    edges: first.edges.map((edge, e) => ({
      ...edge,
      path: sizes.map((piece) => kept(piece.edges[e]!.path)),
      crossings: edge.crossings.map((crossing, c) => ({
        level: crossing.level,
        at: sizes.map((piece) => round(piece.edges[e]!.crossings[c]!.at, SHARE)),
      })),
      notches: edge.notches.map((notch, n) => ({
        ...notch,
        at: sizes.map((piece) => round(piece.edges[e]!.notches[n]!.at, SHARE)),
      })),
    })),
    lines: first.lines.map((line, l) => ({
      ...line,
      path: sizes.map((piece) => kept(piece.lines[l]!.path)),
    })),
    marks: first.marks.map((mark, m) => ({
      ...mark,
      at: sizes.map((piece) => kept([piece.marks[m]!.at])[0]!),
    })),
  };
}

/** All pieces of a garment nested: `sizes[s]` is the whole garment in size s, pieces in the same order. */
export function nestAll(sizes: readonly (readonly DrawnPiece[])[]): NestedPiece[] {
  return sizes[0]!.map((_, p) => nest(sizes.map((pieces) => pieces[p]!)));
}
