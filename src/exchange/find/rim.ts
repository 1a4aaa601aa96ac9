import type { SeamChain, SewnEdge } from './seam-edge.ts';

/** A settled seam between two walks. */
export interface Settled {
  readonly a: SeamChain;
  readonly b: SeamChain;
}

interface Step {
  readonly edge: SewnEdge;
  readonly backwards: boolean;
}

/**
 * The rims of a half-sewn garment: walks along open edges that go on across seams already settled (an armhole over the shoulder
 * seam, a waist over the side seam). Each is as long as it gets; rings end where they began.
 */
export function rims(open: readonly SewnEdge[], settled: readonly Settled[]): SeamChain[] {
  const free = new Set(open);
  const seen = new Set<SewnEdge>();
  const found: SeamChain[] = [];
  for (const start of open) {
    if (seen.has(start)) continue;
    const forward = follow({ edge: start, backwards: false }, free, settled);
    const ring = forward.ring;
    const back = ring ? [] : follow({ edge: start, backwards: true }, free, settled).steps.slice(1);
    const steps: Step[] = [
      ...back.toReversed().map((step) => ({ edge: step.edge, backwards: !step.backwards })),
      ...forward.steps,
    ];
    for (const step of steps) seen.add(step.edge);
    found.push({ steps, ring });
  }
  return found;
}

function follow(start: Step, free: ReadonlySet<SewnEdge>, settled: readonly Settled[]): SeamChain {
  const steps: Step[] = [start];
  const used = new Set([start.edge]);
  for (let now = start; ;) {
    const next = across(now, settled);
    if (!next || !free.has(next.edge)) return { steps, ring: false };
    if (next.edge === start.edge) return { steps, ring: next.backwards === start.backwards };
    if (used.has(next.edge)) return { steps, ring: false };
    used.add(next.edge);
    steps.push(next);
    now = next;
  }
}

/**
 * The same seam from every place where it may begin: once all else is sewn, a walk that closes to a ring (an armhole whose shoulder was sewn later) begins
 * where its other side does. Only itself while it is open.
 */
export function ringStarts(chain: SeamChain, settled: readonly Settled[]): SeamChain[] {
  const first = chain.steps[0]!;
  const beyond = across(chain.steps.at(-1)!, settled);
  if (chain.steps.length < 2 || beyond?.edge !== first.edge || beyond.backwards !== first.backwards)
    return [chain];
  return chain.steps.map((_, i) => ({
    ring: true,
    steps: [...chain.steps.slice(i), ...chain.steps.slice(0, i)],
  }));
}

/** The open edge that goes on beyond the end of this one: over the neighbour's seam to the other piece and on round its corner. */
function across(step: Step, settled: readonly Settled[]): Step | null {
  const neighbour = step.backwards ? step.edge.before : step.edge.next;
  if (!neighbour) return null;
  // We arrive at the neighbour's start when walking forwards round the piece, at its end otherwise.
  const atStart = !step.backwards;
  for (const { a, b } of settled) {
    for (const [here, there] of [
      [a, b],
      [b, a],
    ] as const) {
      if (here.steps.length === 0) continue;
      const first = here.steps[0]!;
      const last = here.steps.at(-1)!;
      // Are we at the beginning of the walk `here`, or at its end?
      const begins = first.edge === neighbour && first.backwards !== atStart;
      const ends = last.edge === neighbour && last.backwards === atStart;
      if (!begins && !ends) continue;
      const other = begins ? there.steps[0]! : there.steps.at(-1)!;
      // The other piece's corner at that end of the seam: the edge beyond it leads away.
      const cornerAtStart = begins ? !other.backwards : other.backwards;
      const beyond = cornerAtStart ? other.edge.before : other.edge.next;
      if (!beyond || (beyond === step.edge && a.steps[0]!.edge.piece !== b.steps[0]!.edge.piece)) continue;
      return { edge: beyond, backwards: cornerAtStart };
    }
  }
  return null;
}

/** Every part of a rim, longest first, at most `most` edges; a ring may begin anywhere and is also offered whole. */
export function rimParts(rim: SeamChain, most: number): SeamChain[] {
  const n = rim.steps.length;
  const parts: SeamChain[] = [];
  for (let long = Math.min(n, most); long >= 1; long--) {
    for (let from = 0; from < (rim.ring ? n : n - long + 1); from++) {
      const steps = Array.from({ length: long }, (_, i) => rim.steps[(from + i) % n]!);
      parts.push({ steps, ring: rim.ring && long === n });
    }
  }
  return parts;
}

/**
 * Walks over a fold or a centre seam: a piece cut on the fold goes on as its own mirror twin. From a rim that ends on a fold, there and back again; from
 * one with a fold at both ends the whole ring, beginning at any of its edges. `twins`: edges sewn to their own mirror twin.
 */
export function foldedOut(rim: SeamChain, most: number, twins: ReadonlySet<SewnEdge>): SeamChain[] {
  if (rim.ring) return [];
  const first = rim.steps[0]!;
  const last = rim.steps.at(-1)!;
  // An edge sewn to its own twin is to its neighbours what a fold is.
  const mirrored = (edge: SewnEdge, end: 0 | 1): boolean => {
    const beyond = end === 0 ? edge.before : edge.next;
    return edge.folds[end] || (beyond !== null && twins.has(beyond));
  };
  const startFold = mirrored(first.edge, first.backwards ? 1 : 0);
  const endFold = mirrored(last.edge, last.backwards ? 0 : 1);
  const back = (steps: readonly Step[]): Step[] =>
    steps.toReversed().map((step) => ({ edge: step.edge, backwards: !step.backwards }));
  const n = rim.steps.length;
  if (startFold && endFold) {
    if (2 * n > most) return [];
    const whole = [...rim.steps, ...back(rim.steps)];
    return whole.map((_, i) => ({ ring: true, steps: [...whole.slice(i), ...whole.slice(0, i)] }));
  }
  const chains: SeamChain[] = [];
  for (let long = 1; long <= n && 2 * long <= most; long++) {
    const head = rim.steps.slice(0, long);
    const tail = rim.steps.slice(n - long);
    if (startFold) chains.push({ ring: false, steps: [...back(head), ...head] });
    if (endFold) chains.push({ ring: false, steps: [...tail, ...back(tail)] });
  }
  return chains;
}
