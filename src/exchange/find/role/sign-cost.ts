import type { Slot } from './contour-table.ts';
import type { Guess } from './match.ts';
import { ownRiseCost } from './compare.ts';
import { posed } from './pose.ts';
import type { Run, RunPiece } from './run.ts';

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
  let cost = footCost(piece, guess) + bandCost(piece, guess);
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
  return Math.max(-MOST, Math.min(MOST, cost)) + ownRiseCost({ piece, guess }) + alongCost(piece, guess);
}

/** Words along an edge that name it, and another than the guess. */
const NAMED_SO = -1.5;
const NAMED_OTHERWISE = 2;

function alongCost({ runs }: RunPiece, { slots }: Guess): number {
  return runs.reduce((sum, { edges }, i) => {
    const named = edges.flatMap(({ along }) => (along ? [along.roles] : []));
    const role = slots[i]?.role;
    if (named.length === 0 || role === undefined) return sum;
    return sum + (named.some((roles) => roles.includes(role)) ? NAMED_SO : NAMED_OTHERWISE);
  }, 0);
}

/** Notches of a band are on the edge that is sewn; a shaped one is longer there, below the waist. */
const NOTCHED = 1.5;
const SHAPED = 0.4;
const SHAPED_MM = 4;

/** What tells the two long edges of a band apart. */
function bandCost({ runs }: RunPiece, { contour, slots }: Guess): number {
  if (!contour!.band) return 0;
  const of = (role: string) => runs.filter((_, i) => slots[i]?.role === role);
  const [attached, outer] = [of('attached'), of('outer')];
  const notches = (list: readonly Run[]) => list.reduce((sum, run) => sum + run.notches.length, 0);
  const long = (list: readonly Run[]) => list.reduce((sum, run) => sum + run.long, 0);
  if (attached.length === 0 || outer.length === 0) return 0;
  const told = Math.sign(Math.min(1, notches(outer)) - Math.min(1, notches(attached)));
  const longer = long(outer) - long(attached);
  const shaped = contour!.role === 'waistband' && Math.abs(longer) > SHAPED_MM ? Math.sign(longer) : 0;
  return NOTCHED * told + SHAPED * shaped;
}

/** Darts open at a waist, hardly ever at a hem. */
const DART_AT_WAIST = -1.5;
const DART_AT_HEM = 2;

/** What darts in the lowest edge of a trunk say. */
function footCost({ runs }: RunPiece, { contour, slots }: Guess): number {
  const foot = contour!.slots[0]!;
  if (contour!.region !== 'trunk' || (foot.role !== 'hem' && foot.role !== 'waist')) return 0;
  const darted = runs.some((run, i) => slots[i] === foot && run.darts > 0);
  return darted ? (foot.role === 'waist' ? DART_AT_WAIST : DART_AT_HEM) : 0;
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
