import type { Slot } from './contour-table.ts';
import type { Guess } from './match.ts';
import { ownRiseCost } from './compare.ts';
import { posed } from './pose.ts';
import type { RunPiece } from './run.ts';

/** Two teeth say back, one says front or nothing, three the centre back: *common practice*, though not every maker keeps it. */
const TWO_ON_FRONT = 1.6;
const ONLY_ONE_ON_BACK = 0.7;
const MOST = 3;
/** The front of a cap is hollowed more than its back. */
const HOLLOW = 0.25;
const HOLLOW_TURN = 0.15;

/** Roles whose notches tell front from back. */
const TELLING = new Set([
  'armhole',
  'side',
  'outseam',
  'inseam',
  'panel',
  'yoke',
  'shoulder',
  'cap',
  'underarm',
]);

/** What the teeth of notches and the hollows of a cap say about front and back in a guess, as a cost. */
export function signCost(piece: RunPiece, guess: Guess): number {
  const { contour } = guess;
  if (!contour) return 0;
  let cost = 0;
  piece.runs.forEach((drawn, i) => {
    const slot = guess.slots[i];
    if (!slot || !TELLING.has(slot.role)) return;
    const run = posed(drawn, guess.pose);
    const half = halfOf(slot, contour.half);
    if (half)
      cost += teethCost(
        run.notches.map((notch) => notch.count),
        half,
      );
    else if (slot.role === 'cap') cost += capCost(run.notches, run.turns);
  });
  return Math.max(-MOST, Math.min(MOST, cost)) + ownRiseCost({ piece, guess });
}

const halfOf = (slot: Slot, half: string): 'front' | 'back' | null =>
  slot.half ?? (half === 'front' || half === 'back' ? half : null);

function teethCost(counts: readonly number[], half: 'front' | 'back'): number {
  const twos = counts.filter((count) => count === 2).length;
  const ones = counts.filter((count) => count === 1).length;
  if (half === 'front') return twos > 0 ? TWO_ON_FRONT : 0;
  return twos === 0 && ones > 0 ? ONLY_ONE_ON_BACK : 0;
}

/** Our way a cap runs from its back to its front. */
function capCost(
  notches: readonly { readonly share: number; readonly count: number }[],
  turns: readonly [number, number, number],
): number {
  const two = notches.filter((notch) => notch.count === 2);
  const teeth = two.reduce((sum, notch) => sum + (notch.share < 0.5 ? -1 : 1), 0);
  const hollow = Math.tanh((turns[2] - turns[0]) / HOLLOW_TURN) * HOLLOW;
  return Math.max(-1, Math.min(1, teeth)) * TWO_ON_FRONT + hollow;
}
