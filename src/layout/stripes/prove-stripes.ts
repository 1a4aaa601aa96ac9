import type { Phrase } from '../../garment/index.ts';
import type { Point } from '../../geometry/index.ts';
import { cross, sub } from '../../geometry/index.ts';
import type { Match } from '../job/garment-matches.ts';
import { bottomShift } from '../job/folding.ts';
import type { CuttingPiece, Lay, LayJob } from '../job/lay-job.ts';
import { offRepeat } from './stripes.ts';
import type { CutPart } from '../job/unfold.ts';
import { onCloth } from '../job/unfold.ts';

/** Bars may miss by so much, mm: what `matchStripes` lets pass as meeting, and a rounding. */
const MISS_MM = 1.01;

export interface BarMiss {
  readonly piece: string;
  readonly say: Phrase;
  /** mm by which the bars miss. */
  readonly mm: number;
}

/**
 * Checks on the flat cloth, as cut, that the bars meet at every match: the distance from the point of the seam to the nearest bar must be the same on both
 * parts, every part of one with every part of the other. Knows nothing of phases or rails. Pinned copies are the person's own; a fold piece's other half follows its first.
 */
export function missedBars(job: LayJob, lay: Lay, parts: readonly CutPart[]): BarMiss[] {
  const { repeat } = job;
  if (!repeat) return [];
  const bars = barOrigin(job, lay);
  return (job.matches ?? []).flatMap((match): BarMiss[] => {
    const own = (end: Match['a']): { along: number; across: number }[] =>
      parts
        .filter((p) => !p.spare && p.piece === end.piece && !pinned(job, p))
        .map((p) => fromBars(bars, pieceOf(job, end.piece), p, end.at));
    const b = own(match.b);
    const misses = own(match.a).flatMap((x) =>
      b.map((y) => {
        const side = match.down === 'mirrored' ? x.across + y.across : x.across - y.across;
        return Math.max(
          Math.abs(offRepeat(x.along - y.along, repeat.along)),
          match.down ? Math.abs(offRepeat(side, repeat.across)) : 0,
        );
      }),
    );
    const mm = Math.max(0, ...misses);
    return mm > MISS_MM ? [{ piece: match.b.piece, say: match.say, mm }] : [];
  });
}

const pieceOf = (job: LayJob, id: string): CuttingPiece => job.pieces.find((p) => p.piece === id)!;

const pinned = (job: LayJob, part: CutPart): boolean =>
  job.pins.some((p) => p.piece === part.piece && p.copy === part.copy);

/** How far a point of a part stands from the cloth's bars, up along its own grain and to its own right. */
function fromBars(
  bars: Point,
  piece: CuttingPiece,
  part: CutPart,
  at: Point,
): { along: number; across: number } {
  const spot = onCloth(part, at);
  const grain = sub(onCloth(part, piece.grain[1]), onCloth(part, piece.grain[0]));
  const way = grain.x > 0 ? 1 : -1;
  // Seen in the piece's own drawing, its right lies to the right of its grain; a mirrored part has it on the left.
  const hand = cross(part.frame.x, part.frame.y) > 0 ? 1 : -1;
  return {
    along: way * (spot.x - bars.x),
    across: -way * hand * (spot.y - bars.y),
  };
}

/** A place on the flat cloth where a bar across and a stripe down cross. */
function barOrigin(job: LayJob, lay: Lay): Point {
  const { alongAt = 0, acrossAt = 0 } = job.repeat ?? {};
  return {
    x: alongAt + (job.fold === 'crosswise' ? lay.spread : 0),
    y: acrossAt + bottomShift(job, lay.folded),
  };
}
