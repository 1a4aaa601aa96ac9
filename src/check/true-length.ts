import { pieceAt } from '../garment/index.ts';
import type { EdgeRef, Garment, Seam } from '../garment/index.ts';
import { chainSide } from './corner.ts';
import type { JointSide } from './corner.ts';
import { extendEdge, withPiece } from './rework.ts';
import { walkLengths } from './walk.ts';

/** A seam this near to its mark is left alone: a fifth of what would be noted. */
const ENOUGH_MM = 0.1;
/** Truing moves a corner at most so far in all; more is an alteration and must be decided, not slipped in (about 1/2 in, trade.md 5.0). */
export const TRUE_LIMIT_MM = 12.7;
/** Moving a corner changes its chain by about as much; a few rounds bring it to the mark. */
const ROUNDS = 5;

type Side = 'a' | 'b';
type End = 'start' | 'end';

/**
 * How unwilling a seam's end is to move, by what crosses it there: a hem or bound edge gives way first, an eased seam (it has room) before a
 * plain one, a fold last.
 */
function reluctance(garment: Garment, side: JointSide): number {
  const line = side.piece.edges[side.lineEdge]!;
  if (line.kind === 'hem') return 0;
  if (line.kind === 'free') return 1;
  if (line.kind === 'opening') return 2;
  if (line.kind === 'dart') return 6;
  if (line.kind === 'fold') return 9;
  const other = garment.seams.find((s) =>
    [...s.a, ...s.b].some((ref) => ref.piece === side.piece.id && ref.edge === line.id),
  );
  return other && other.join.kind !== 'plain' ? 3 : 4;
}

function endsToMove(garment: Garment, seam: Seam): readonly End[] {
  const cost = (end: End): number => {
    let sum = 0;
    for (const chain of [seam.a, seam.b]) {
      const side = chainSide(garment, chain, end);
      sum += side ? reluctance(garment, side) : 9;
    }
    return sum;
  };
  const start = cost('start');
  const end = cost('end');
  // Equal ends share the move (a sleeve's two underarms); else the more willing one takes it.
  return start === end ? ['start', 'end'] : start < end ? ['start'] : ['end'];
}

/** Distances that corners have been moved so far, for the limit; the key is corner number, space, piece id. */
export type Moved = Map<string, number>;

/**
 * Brings the two chains of a seam into their intended relation by moving the corners at its end along the seam's own direction, half on
 * each side, or all on the side that is not kept; the lines that cross there follow. Nothing is moved further than TRUE_LIMIT_MM in all.
 */
export function equalise(garment: Garment, seam: Seam, keep: Side | undefined, moved: Moved): Garment {
  let now = garment;
  let ends: readonly End[] | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const walk = walkLengths(now, seam);
    if (!walk || Math.abs(walk.difference) <= ENOUGH_MM / 10) return now;
    if (round === 0 && Math.abs(walk.difference) <= ENOUGH_MM) return now;
    ends ??= endsToMove(garment, seam);
    // `a` too long by `difference`: a gives it up, or b gains it (in proportion on a gathered seam).
    const ratio = seam.join.kind === 'gathered' ? walk.a / Math.max(walk.b, 1) : 1;
    const share = keep === 'a' ? { a: 0, b: 1 } : keep === 'b' ? { a: 1, b: 0 } : { a: 0.5, b: 0.5 };
    now = lengthen(now, seam.a, ends, -walk.difference * share.a, moved);
    now = lengthen(now, seam.b, ends, (walk.difference * share.b) / ratio, moved);
  }
  return now;
}

function lengthen(
  garment: Garment,
  chain: readonly EdgeRef[],
  ends: readonly End[],
  by: number,
  moved: Moved,
): Garment {
  let now = garment;
  if (by === 0) return now;
  for (const end of ends) {
    const side = chainSide(now, chain, end);
    const piece = side && pieceAt(now, side.piece.id);
    if (!side || !piece) continue;
    const key = `${side.corner} ${piece.id}`;
    const had = moved.get(key) ?? 0;
    const wanted = had + by / ends.length;
    const held = Math.max(-TRUE_LIMIT_MM, Math.min(TRUE_LIMIT_MM, wanted));
    if (held === had) continue;
    moved.set(key, held);
    now = withPiece(now, extendEdge(piece, side.seamEdge, side.lineStarts, held - had));
  }
  return now;
}
