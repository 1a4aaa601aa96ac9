import type { Contour, Slot } from './contour-table.ts';
import { posed } from './pose.ts';
import type { Pose } from './pose.ts';
import type { Run, RunPiece } from './run.ts';
import { slotCost } from './slot-cost.ts';

/** One way to see a piece: a contour in a pose, every run with its slot or none. */
export interface Guess {
  readonly contour: Contour | null;
  readonly pose: Pose;
  /** By run of the piece, as drawn. */
  readonly slots: readonly (Slot | null)[];
  /** Minus the logarithm of its likelihood by the piece alone. */
  readonly cost: number;
}

/** A run that no slot wants, and more for all of the outline. */
const STRAY = 2;
const STRAY_ALL = 8;
/** Each further run in one slot, and more the sharper the corner between. */
const CORNER = 1;
const CORNER_SHARP = 0.35;
/** … and where one is sewn and the other not. */
const UNLIKE = 2;

const loose = ({ edges }: Run): boolean =>
  edges.every((edge) => edge.kind === 'hem' || edge.kind === 'free' || edge.kind === 'opening');

/** A piece in one pose: its spans of one to four runs, each once for all contours. */
export interface Laid {
  readonly pose: Pose;
  /** By place round the outline our way, and by how many more runs follow. */
  readonly spans: readonly (readonly LaidSpan[])[];
  /** Place on the outline our way → run as drawn. */
  readonly place: readonly number[];
  readonly stray: readonly number[];
  /** The farthest that any of its runs moves between sizes, mm. */
  readonly moves: number;
}

interface LaidSpan {
  readonly run: Run;
  /** What its inner corners cost. */
  readonly corners: number;
}

/** Lays a piece the way of our custom. */
export function lay({ spans, runs, round, moves }: RunPiece, pose: Pose): Laid {
  const n = runs.length;
  const place = runs.map((_, i) => (pose.over ? (n - i) % n : i));
  const span = (i: number, more: number): Run => {
    // Turned over, runs follow one another the other way round: a span begins at what was its last.
    const from = pose.over ? place[(i + more) % n]! : place[i % n]!;
    return posed(spans[from]![more]!, pose);
  };
  const turns = runs.map((_, i) => Math.PI - span(i, 0).corners[1]);
  return {
    pose,
    place,
    moves,
    stray: place.map((i) => STRAY + (STRAY_ALL * runs[i]!.long) / round),
    spans: runs.map((_, i) => {
      let corners = 0;
      return spans[0]!.map((__, more) => {
        if (more > 0) {
          const [one, next] = [i + more - 1, i + more].map((at) => runs[place[at % n]!]!);
          corners += CORNER + Math.min(4, (turns[(i + more - 1) % n]! / CORNER_SHARP) ** 2 / 2);
          corners += loose(one!) === loose(next!) ? 0 : UNLIKE;
        }
        return { run: span(i, more), corners };
      });
    }),
  };
}

/**
 * The best way to lay a contour round a piece in one pose: slots in order round the outline, each on one to four runs, runs left over at a
 * cost. Null where a slot that may not lack finds nothing, or where it would cost more than `most`.
 */
export function match(
  { spans, place, stray, pose, moves }: Laid,
  contour: Contour,
  most: number,
): Guess | null {
  const n = spans.length;
  const { slots } = contour;
  if (slots.filter((slot) => slot.lacks === undefined).length > n) return null;
  const costs = spans.map((own) =>
    own.map(({ run, corners }) =>
      slots.map((slot) => slotCost(run, slot, moves) + (slot.corners ? 0 : corners)),
    ),
  );
  const least = slots.map((slot, s) =>
    Math.min(slot.lacks ?? Infinity, ...costs.flatMap((own) => own.map((bySlot) => bySlot[s]!))),
  );
  if (least.reduce((sum, cost) => sum + cost, contour.rare) > most) return null;
  let best: { cost: number; steps: readonly Step[] } | null = null;
  for (let first = 0; first < n; first++) {
    if (Math.min(...costs[first]!.map((bySlot) => bySlot[0]!)) > most) continue;
    const found = along(n, slots, first, costs, stray);
    if (found && (!best || found.cost < best.cost - 1e-9)) best = found;
  }
  if (!best) return null;
  const own = Array.from({ length: n }, (): Slot | null => null);
  for (const { run, more, slot } of best.steps)
    if (slot !== null) for (let j = 0; j <= more; j++) own[place[(run + j) % n]!] = slots[slot]!;
  return { contour, pose, slots: own, cost: best.cost + contour.rare };
}

interface Step {
  readonly run: number;
  readonly more: number;
  readonly slot: number | null;
}

/** How a state was reached: nothing taken, a run left over, or `1 + more` runs in the slot. */
const LACKS = -1;
const LEFT_OVER = 0;

/** Slots in order over runs in order, the first slot at the run `first`; the cheapest by what is done before. */
function along(
  n: number,
  slots: readonly Slot[],
  first: number,
  costs: readonly (readonly (readonly number[])[])[],
  stray: readonly number[],
): { cost: number; steps: Step[] } | null {
  const m = slots.length;
  const wide = n + 1;
  const least = new Float64Array((m + 1) * wide).fill(Infinity);
  const how = new Int8Array(least.length);
  least[0] = 0;
  const reach = (to: number, cost: number, by: number): void => {
    if (cost >= least[to]! - 1e-12) return;
    least[to] = cost;
    how[to] = by;
  };
  for (let slot = 0; slot <= m; slot++) {
    const lacks = slots[slot]?.lacks;
    for (let run = 0; run <= n; run++) {
      const here = slot * wide + run;
      const cost = least[here]!;
      if (cost === Infinity) continue;
      if (lacks !== undefined) reach(here + wide, cost + lacks, LACKS);
      if (run === n) continue;
      const placed = (first + run) % n;
      // The first run is what the first slot takes: other beginnings are tried by themselves.
      if (slot > 0) reach(here + 1, cost + stray[placed]!, LEFT_OVER);
      if (slot === m) continue;
      const own = costs[placed]!;
      for (let more = 0; more < own.length && run + more < n; more++)
        reach(here + wide + more + 1, cost + own[more]![slot]!, more + 1);
    }
  }
  const end = m * wide + n;
  if (least[end] === Infinity) return null;
  const steps: Step[] = [];
  for (let slot = m, run = n; slot > 0 || run > 0;) {
    const by = how[slot * wide + run]!;
    if (by === LACKS) slot--;
    else if (by === LEFT_OVER) steps.push({ run: (first + --run) % n, more: 0, slot: null });
    else {
      run -= by;
      slot--;
      steps.push({ run: (first + run) % n, more: by - 1, slot });
    }
  }
  return { cost: least[end]!, steps };
}
