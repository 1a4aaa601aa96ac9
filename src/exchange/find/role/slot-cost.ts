import type { Slot } from './contour-table.ts';
import { wrapped } from './run.ts';
import type { Run } from './run.ts';

/**
 * How badly a run suits a slot, as a cost: minus the logarithm of a likelihood, so that costs add up. `moves`: the farthest
 * that any run of its piece moves between sizes, mm. All weights here are *judged*, on drawings
 * other than those the docs measure with.
 */
export function slotCost(run: Run, slot: Slot, moves: number): number {
  const off = wrapped(run.face - (slot.face * Math.PI) / 180) * (180 / Math.PI);
  return (
    Math.min(FACE_MOST, (off / slot.wide) ** 2 / 2) +
    Math.min(BOW_MOST, ((run.bow - slot.bow) / slot.slack) ** 2 / 2) +
    lengthCost(run.long, slot.long) +
    foldCost(run, slot) +
    formCost(run, slot) +
    kindCost(run, slot) +
    stillCost(run, slot, moves)
  );
}

/** No single sign outweighs all the others. */
const FACE_MOST = 9;
const BOW_MOST = 5;
const LONG_MOST = 6;

/** Twice as long as the longest costs 5.8. */
function lengthCost(long: number, [least, most]: readonly [number, number]): number {
  const beyond = Math.max(0, Math.log(least / Math.max(long, 1)), Math.log(long / most));
  return Math.min(LONG_MOST, 12 * beyond ** 2);
}

/** Cut on the fold: a centre, hardly anything else. */
function foldCost(run: Run, slot: Slot): number {
  if (run.fold) return slot.fold ? -1.5 : 7;
  if (!slot.fold) return 0;
  return run.edges.some((edge) => edge.kind === 'opening') ? -0.5 : 0.2;
}

/** A turn that is more than a wavering of the line, radians. */
const TURNS = 0.12;

function formCost({ turns }: Run, { form }: Slot): number {
  if (form === 'cap')
    return turns[1] > TURNS && turns[0] < TURNS && turns[2] < TURNS
      ? turns[0] < -TURNS && turns[2] < -TURNS
        ? -1
        : 0
      : 2;
  if (form === 'hook') return Math.min(turns[0], turns[2]) < -2 * TURNS ? -0.5 : 1.5;
  return 0;
}

/** Edges that are always sewn to another. */
const SEWN = new Set<string>([
  'side',
  'outseam',
  'shoulder',
  'panel',
  'yoke',
  'cap',
  'underarm',
  'inseam',
  'attached',
]);

/** What was found to be sewn to nothing, or to be an opening. */
function kindCost({ edges }: Run, slot: Slot): number {
  const kinds = edges.map((edge) => edge.kind);
  if (slot.kind) return kinds.every((kind) => kind === slot.kind) ? -0.5 : slot.kind === 'opening' ? 1.8 : 4;
  if (kinds.includes('opening')) return slot.role === 'opening' ? 0 : 2.5;
  const loose = kinds.every((kind) => kind === 'hem' || kind === 'free');
  if (!loose) return 0;
  return SEWN.has(slot.role) || (slot.role === 'waist' && slot.face < 0) ? 0.8 : 0;
}

/** Sizes that move a piece by less tell nothing, mm. */
const MOVES_MM = 6;
/** An edge that moves by less than this share of the farthest stands still. */
const STILL = 0.12;

/** Drawn on one another, sizes often share their centre: it hardly moves, a side moves outwards. */
function stillCost(run: Run, slot: Slot, moves: number): number {
  if (
    moves < MOVES_MM ||
    !(slot.role === 'centre' || slot.role === 'side' || slot.role === 'panel' || slot.role === 'outseam')
  )
    return 0;
  const still = Math.abs(run.moves) < STILL * moves;
  if (slot.role === 'centre') return still ? -0.7 : 0.5;
  return still ? 0.7 : 0;
}
