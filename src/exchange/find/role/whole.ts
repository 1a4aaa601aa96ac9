import { compareCost } from './compare.ts';
import { joinCost, meaningOf } from './company.ts';
import type { Join } from './company.ts';
import type { Guess } from './match.ts';
import type { RunPiece } from './run.ts';

/** Two pieces that are the same part of the body, in one cloth, are rare. */
const CROWD = 1.2;
/** A front without a back, or the other way round. */
const LONELY = 1.5;

/** Which guess each piece takes, by number. */
export type Choice = number[];

/** A join seen from one of its pieces: what it costs by own guess and the other's. */
interface Seen {
  readonly other: number;
  readonly costs: readonly (readonly number[])[];
}

/** All pieces with their guesses, and what one choice for all of them costs. */
export class Whole {
  readonly guesses: readonly (readonly Guess[])[];
  /** Joins by piece, each seen from that piece. */
  readonly #joins: readonly (readonly Seen[])[];
  readonly #parts: readonly (readonly string[])[];

  constructor(pieces: readonly RunPiece[], guesses: readonly (readonly Guess[])[], joins: readonly Join[]) {
    this.guesses = guesses;
    const own: Seen[][] = pieces.map(() => []);
    for (const join of joins) {
      const { a, b } = join;
      const table = guesses[a.piece]!.map((one) =>
        guesses[b.piece]!.map((other) => joinCost(meaningOf(one, a.run), meaningOf(other, b.run), join)),
      );
      own[a.piece]!.push({ other: b.piece, costs: table });
      if (a.piece !== b.piece)
        own[b.piece]!.push({
          other: a.piece,
          costs: guesses[b.piece]!.map((_, i) => table.map((row) => row[i]!)),
        });
    }
    for (const [a, b] of pairsOf(joins)) {
      const table = guesses[a]!.map((guess) =>
        guesses[b]!.map((other) =>
          compareCost({ piece: pieces[a]!, guess }, { piece: pieces[b]!, guess: other }),
        ),
      );
      own[a]!.push({ other: b, costs: table });
      own[b]!.push({ other: a, costs: guesses[b]!.map((_, i) => table.map((row) => row[i]!)) });
    }
    this.#joins = own;
    this.#parts = guesses.map((list, p) => list.map((guess) => partOf(guess, pieces[p]!.piece.cloth)));
  }

  /** Pieces sewn to a piece. */
  neighbours(piece: number): number[] {
    return [...new Set(this.#joins[piece]!.map((join) => join.other))].filter((other) => other !== piece);
  }

  /** What a piece's guess costs beside the pieces chosen so far; `undefined` stands for one not yet chosen. */
  cost(piece: number, guess: number, choice: readonly (number | undefined)[]): number {
    let { cost } = this.guesses[piece]![guess]!;
    for (const { other, costs } of this.#joins[piece]!) {
      const taken = other === piece ? guess : choice[other];
      if (taken !== undefined) cost += costs[guess]![taken]!;
    }
    return cost;
  }

  /** What all pieces cost together. */
  total(choice: Choice): number {
    let cost = 0;
    const taken: (number | undefined)[] = choice.map(() => undefined);
    choice.forEach((guess, piece) => {
      cost += this.cost(piece, guess, taken);
      taken[piece] = guess;
    });
    return cost + this.partsCost(choice);
  }

  /** Of what is on the body twice, or lacks its other half. */
  partsCost(choice: readonly (number | undefined)[]): number {
    const count = this.#count(choice, null);
    let cost = 0;
    for (const [part, many] of count) cost += CROWD * (many - 1) + (count.has(otherHalf(part)) ? 0 : LONELY);
    return cost;
  }

  /** How often each part is chosen, one piece left out. */
  #count(choice: readonly (number | undefined)[], without: number | null): Map<string, number> {
    const count = new Map<string, number>();
    choice.forEach((guess, piece) => {
      const part = guess === undefined || piece === without ? '' : this.#parts[piece]![guess]!;
      if (part) count.set(part, (count.get(part) ?? 0) + 1);
    });
    return count;
  }

  /** What a piece's part adds to those counted. */
  #partCost(part: string, others: ReadonlyMap<string, number>): number {
    if (!part) return 0;
    const other = otherHalf(part);
    if (others.has(part)) return CROWD;
    return others.has(other) ? -LONELY : LONELY;
  }

  /** Betters a choice piece by piece until nothing changes; `fixed` stays. */
  settle(from: Choice, fixed: number | null): { choice: Choice; cost: number } {
    const choice = [...from];
    for (let sweep = 0, changed = true; changed && sweep < SWEEPS; sweep++) {
      changed = false;
      for (let piece = 0; piece < choice.length; piece++) {
        if (piece === fixed) continue;
        const now = choice[piece]!;
        let best = now;
        let least = Infinity;
        const others = this.#count(choice, piece);
        this.guesses[piece]!.forEach((_, guess) => {
          const part = this.#parts[piece]![guess]!;
          const cost = this.cost(piece, guess, choice) + this.#partCost(part, others);
          if (cost < least - 1e-9) {
            least = cost;
            best = guess;
          }
        });
        choice[piece] = best;
        changed ||= best !== now;
      }
    }
    return { choice, cost: this.total(choice) };
  }

  /** The same with every front taken for a back and every back for a front, where a piece has a guess for that. */
  swapped(choice: Choice): Choice {
    return choice.map((guess, piece) => {
      const part = this.#parts[piece]![guess]!;
      if (!part) return guess;
      const shape = shapeOf(this.guesses[piece]![guess]!);
      const other = this.guesses[piece]!.findIndex(
        (one, i) => this.#parts[piece]![i] === otherHalf(part) && shapeOf(one) === shape,
      );
      return other < 0 ? guess : other;
    });
  }
}

/** Every two pieces that are sewn together, once. */
function pairsOf(joins: readonly Join[]): [number, number][] {
  const pairs = new Map<string, [number, number]>();
  for (const { a, b } of joins) {
    const [p, q] = [Math.min(a.piece, b.piece), Math.max(a.piece, b.piece)];
    if (p !== q) pairs.set(`${p} ${q}`, [p, q]);
  }
  return [...pairs.values()];
}

const SWEEPS = 6;

/** What a guess says a piece is on the body: `shell trunk front/front`. Empty for what may well be there twice. */
function partOf({ contour }: Guess, cloth: string): string {
  if (!contour || (contour.half !== 'front' && contour.half !== 'back')) return '';
  const role = contour.role.replace(/front|back/, '*');
  return `${cloth} ${contour.region} ${role} ${contour.half}`;
}

const otherHalf = (part: string): string =>
  part.endsWith(' front') ? part.replace(/front$/, 'back') : part.replace(/back$/, 'front');

const shapeOf = (guess: Guess): string => guess.slots.map((slot) => slot?.role ?? '').join();
