import { pathLength } from '../geometry/index.ts';
import type { EdgeRef, Garment } from '../garment/index.ts';
import { put } from './change.ts';
import type { Change } from './change.ts';
import { halfOf, pieceOf } from './roles.ts';

/** A notch this near to its place is there. */
const LEAST_MM = 0.05;

const lengthOf = (garment: Garment, ref: EdgeRef): number =>
  pathLength(pieceOf(garment, ref.piece).edges.find((e) => e.id === ref.edge)?.path ?? [{ x: 0, y: 0 }]);

/**
 * Where a piece runs round as one edge (collar, stand, waistband), its shoulder or side notch is put where front and back meet, by walked length.
 * Only on seams that the alteration touched.
 */
export function meetingNotches(change: Change): void {
  for (const seam of change.garment.seams) {
    if (![...seam.a, ...seam.b].some((r) => change.touched.has(r.piece))) continue;
    for (const [one, other] of [
      [seam.a, seam.b],
      [seam.b, seam.a],
    ] as const) {
      const ref = one.length === 1 && other.length > 1 ? one[0]! : undefined;
      if (!ref) continue;
      const halves = other.map((r) => halfOf(pieceOf(change.garment, r.piece)));
      const turns = halves.flatMap((h, i) => (i > 0 && h !== halves[i - 1] ? [i] : []));
      // A band that runs round left and right meets front and back more than once: its notches are left to the walk.
      const turn = turns.length === 1 ? turns[0]! : -1;
      if (turn < 0 || other.some((r) => r.piece === ref.piece)) continue;
      const piece = pieceOf(change.garment, ref.piece);
      const edge = piece.edges.find((e) => e.id === ref.edge);
      const notch = edge?.notches.find((x) => /shoulder|^side/.test(x.id));
      if (!edge || !notch) continue;
      const share =
        other.slice(0, turn).reduce((sum, r) => sum + lengthOf(change.garment, r), 0) /
        Math.max(1e-9, pathLength(edge.path));
      const at = ref.backwards ? 1 - share : share;
      if (Math.abs(at - notch.at) * pathLength(edge.path) < LEAST_MM || at < 0 || at > 1) continue;
      const notches = edge.notches.map((x) => (x === notch ? { ...x, at } : x));
      put(change, { ...piece, edges: piece.edges.map((e) => (e === edge ? { ...e, notches } : e)) });
    }
  }
}
