import type { EdgeRole } from '../../../garment/index.ts';
import type { Guess } from './match.ts';
import type { RunPiece } from './run.ts';

/** A difference of so much is a clear one, mm. */
const CLEAR_MM = 25;
/** What each comparison is worth. *Common practice* of drafting: a neck is cut deeper in front, a seat needs the longer rise, darts are more behind. */
const NECK = 0.9;
const RISE = 1.1;
const DARTS = 0.4;

/** How much longer a run of that role is in one than in the other, mm; null where one has none. */
function longer(role: EdgeRole, one: Seen, other: Seen): number | null {
  const own = lengthOf(role, one);
  const theirs = lengthOf(role, other);
  return own === null || theirs === null ? null : own - theirs;
}

function lengthOf(role: EdgeRole, { piece, guess }: Seen): number | null {
  const runs = piece.runs.filter((_, i) => guess.slots[i]?.role === role);
  return runs.length === 0 ? null : runs.reduce((sum, run) => sum + run.long, 0);
}

/** A piece as it is seen. */
export interface Seen {
  readonly piece: RunPiece;
  readonly guess: Guess;
}

/** What the forms of two pieces that are sewn together say about which of them is the front, as a cost; 0 where they are no front and back. */
export function compareCost(one: Seen, other: Seen): number {
  const [front, back] =
    one.guess.contour?.half === 'front' && other.guess.contour?.half === 'back'
      ? [one, other]
      : one.guess.contour?.half === 'back' && other.guess.contour?.half === 'front'
        ? [other, one]
        : [null, null];
  if (!front || !back || front.guess.contour!.region !== back.guess.contour!.region) return 0;
  const neck = longer('neck', front, back);
  const rise = longer('rise', back, front);
  const darts = Math.sign(back.piece.piece.darts.length - front.piece.piece.darts.length);
  return (
    (neck === null ? 0 : -NECK * Math.tanh(neck / CLEAR_MM)) +
    (rise === null ? 0 : -RISE * Math.tanh(rise / CLEAR_MM)) -
    (neck === null ? DARTS * darts : 0)
  );
}

/** In a leg of one piece the same is asked of its own two rises. */
export function ownRiseCost({ piece, guess }: Seen): number {
  const rises = (half: string) =>
    piece.runs.filter((_, i) => guess.slots[i]?.role === 'rise' && guess.slots[i]?.half === half);
  const [front, back] = ['front', 'back'].map((half) => rises(half).reduce((sum, run) => sum + run.long, 0));
  return front! > 0 && back! > 0 ? -RISE * Math.tanh((back! - front!) / CLEAR_MM) : 0;
}
