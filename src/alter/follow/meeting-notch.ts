import { pathLength } from '../../geometry/index.ts';
import { edgeAt, halfOf } from '../../garment/index.ts';
import type { EdgeRef, Garment, Seam } from '../../garment/index.ts';
import { put } from './change.ts';
import type { Change } from './change.ts';
import { lengthThen } from './length-then.ts';
import { pieceOf } from '../role/roles.ts';

/** A notch this near to its place is there. */
const LEAST_MM = 0.05;

/** Where the meeting of front and back comes to lie on the edge that runs round, mm from its walked start: stretched or gathered edges in proportion. */
function meetingOn(
  garment: Garment,
  seam: Seam,
  ref: EdgeRef,
  before: readonly EdgeRef[],
  all: readonly EdgeRef[],
): number {
  const walked = lengthThen(garment, before);
  return seam.join.kind === 'gathered'
    ? (walked * lengthThen(garment, [ref])) / Math.max(1e-9, lengthThen(garment, all))
    : walked;
}

/**
 * Where a piece runs round as one edge (collar, stand, waistband), its shoulder or side notch goes with the place where front and back meet, by walked
 * length; what the maker had between the two (ease laid before the notch) stays. Only on seams that the alteration touched.
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
      const edge = edgeAt(change.garment, ref)?.edge;
      const notch = edge?.notches.find((x) => x.role === 'shoulder-point' || x.role === 'side');
      if (!edge || !notch) continue;
      const size = pathLength(edge.path);
      const placed = (garment: Garment): number => meetingOn(garment, seam, ref, other.slice(0, turn), other);
      const at =
        (placed(change.garment) + makersOffset(change.before, ref, notch.id, placed)) / Math.max(1e-9, size);
      const share = ref.backwards ? 1 - at : at;
      if (Math.abs(share - notch.at) * size < LEAST_MM || share < 0 || share > 1) continue;
      const notches = edge.notches.map((x) => (x === notch ? { ...x, at: share } : x));
      put(change, { ...piece, edges: piece.edges.map((e) => (e === edge ? { ...e, notches } : e)) });
    }
  }
}

/** How far past the meeting place the notch stood before the alteration, mm along the walk; 0 where the edge is new. */
function makersOffset(
  before: Garment,
  ref: EdgeRef,
  notch: string,
  placed: (garment: Garment) => number,
): number {
  const edge = edgeAt(before, ref)?.edge;
  const was = edge?.notches.find((n) => n.id === notch);
  if (!edge || !was) return 0;
  return (ref.backwards ? 1 - was.at : was.at) * pathLength(edge.path) - placed(before);
}
