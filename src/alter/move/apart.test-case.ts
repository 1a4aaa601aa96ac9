import { distance, nearestPlace, pathAt, pathEnd, pathStart } from '../../geometry/index.ts';
import type { DrawnPiece } from '../../garment/index.ts';

/** Shares of an edge at which two outlines are compared. */
const SHARES = [0, 0.13, 0.29, 0.5, 0.71, 0.88, 1];

/** For tests: largest distance from sampled places of one outline, edge by edge, to the same edge of the other. */
export function apart(a: DrawnPiece, b: DrawnPiece): number {
  let far = 0;
  for (const edge of a.edges) {
    const other = b.edges.find((e) => e.id === edge.id)!;
    far = Math.max(far, distance(pathStart(edge.path), pathStart(other.path)));
    far = Math.max(far, distance(pathEnd(edge.path), pathEnd(other.path)));
    for (const s of SHARES) far = Math.max(far, nearestPlace(other.path, pathAt(edge.path, s)).distance);
    for (const n of edge.notches) {
      const m = other.notches.find((x) => x.id === n.id)!;
      far = Math.max(far, distance(pathAt(edge.path, n.at), pathAt(other.path, m.at)));
    }
    for (const c of edge.crossings) {
      const d = other.crossings.find((x) => x.level === c.level)!;
      far = Math.max(far, distance(pathAt(edge.path, c.at), pathAt(other.path, d.at)));
    }
  }
  for (const mark of a.marks)
    far = Math.max(far, distance(mark.at, b.marks.find((m) => m.id === mark.id)!.at));
  for (const line of a.lines) {
    // Grain is redrawn on its direction, a lengthen/shorten line may lie in what was folded away: neither is cloth.
    if (line.kind !== 'level') continue;
    const other = b.lines.find((l) => l.id === line.id)!;
    far = Math.max(far, distance(pathStart(line.path), pathStart(other.path)));
    far = Math.max(far, distance(pathEnd(line.path), pathEnd(other.path)));
  }
  return far;
}

/** The same for one edge, place by place along it. */
export function apartOf(a: DrawnPiece, b: DrawnPiece, id: string): number {
  const one = a.edges.find((e) => e.id === id)!.path;
  const two = b.edges.find((e) => e.id === id)!.path;
  return Math.max(...SHARES.map((s) => distance(pathAt(one, s), pathAt(two, s))));
}
