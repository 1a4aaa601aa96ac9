import type { Choice, Whole } from './whole.ts';

/** So many wholes are followed at once. */
const BEAM = 120;
/** So many of them are settled in the end. */
const SETTLED = 12;
/** A difference of one in cost makes one whole so much likelier than another (e to the power of 1 / this). Judged on our samples. */
const TEMPER = 1.5;

/** The likeliest whole, and how likely each guess of each piece is, all others free to follow. */
export interface Found {
  readonly choice: Choice;
  /** By piece and guess, adding up to 1. */
  readonly odds: readonly (readonly number[])[];
}

/** Looks for the likeliest whole: a beam over the pieces in the order they hang together, its best settled piece by piece. */
export function likeliest(whole: Whole): Found {
  const beam = search(whole);
  const starts = beam.slice(0, SETTLED);
  let best = { choice: starts[0] ?? [], cost: Infinity };
  for (const start of starts)
    for (const from of [start, whole.swapped(start)]) {
      const settled = whole.settle(from, null);
      if (settled.cost < best.cost - 1e-9) best = settled;
    }
  const { choice } = best;
  const odds = whole.guesses.map((list, piece) => {
    const costs = list.map((_, guess) => {
      if (guess === choice[piece]) return best.cost;
      const from = [choice, whole.swapped(choice), ...beam.filter((one) => one[piece] === guess).slice(0, 1)];
      return Math.min(...from.map((start) => whole.settle(start.with(piece, guess), piece).cost));
    });
    const least = Math.min(...costs);
    const weights = costs.map((cost) => Math.exp((least - cost) / TEMPER));
    const sum = weights.reduce((s, weight) => s + weight, 0);
    return weights.map((weight) => weight / sum);
  });
  return { choice, odds };
}

/** The best wholes, the likeliest first. */
function search(whole: Whole): Choice[] {
  const order = inOrder(whole);
  let beam: { choice: (number | undefined)[]; cost: number }[] = [
    { choice: whole.guesses.map(() => undefined), cost: 0 },
  ];
  for (const piece of order) {
    const grown = beam.flatMap(({ choice, cost }) =>
      whole.guesses[piece]!.map((_, guess) => ({
        choice: choice.with(piece, guess),
        cost: cost + whole.cost(piece, guess, choice),
      })),
    );
    beam = grown.toSorted((a, b) => a.cost - b.cost).slice(0, BEAM);
  }
  return beam
    .map(({ choice, cost }) => ({ choice: choice as Choice, cost: cost + whole.partsCost(choice) }))
    .toSorted((a, b) => a.cost - b.cost)
    .map((one) => one.choice);
}

/** Pieces as they hang together: the surest first, then always one that is sewn to those before, the surest of them. */
function inOrder(whole: Whole): number[] {
  const margin = whole.guesses.map((list) => (list[1]?.cost ?? 9) - (list[0]?.cost ?? 0));
  const left = new Set(whole.guesses.keys());
  const reached = new Set<number>();
  const order: number[] = [];
  while (left.size > 0) {
    const near = [...left].filter((piece) => reached.has(piece));
    const next = (near.length > 0 ? near : [...left]).reduce((a, b) => (margin[b]! > margin[a]! ? b : a));
    left.delete(next);
    order.push(next);
    for (const other of whole.neighbours(next)) reached.add(other);
  }
  return order;
}
