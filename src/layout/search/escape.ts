import type { Way } from './disturbed.ts';
import { few, flip, nearSwap, shake, sizeSwap, stir } from './gentle-escape.ts';
import type { Random } from './random.ts';
import type { Separation } from './separation.ts';
import type { Strip } from './strip.ts';
import { afresh, halfTurn, reorder, reseat, swaps } from './wild-escape.ts';

/** Only the shortening, at another cut. */
const again: Way = () => undefined;

/**
 * Ways out of a valley, from gentle to wild. From good layouts shortened by 0.3 % the gentle ones led to a free layout for a half to a fifth of the
 * work (shirts, marques, albano); the wild ones are for when nothing near is left.
 */
const WAYS: readonly Way[] = [
  again,
  nearSwap,
  flip,
  few,
  sizeSwap,
  shake,
  stir,
  reseat,
  swaps,
  halfTurn,
  reorder,
  afresh,
];

/** A way counts as tried for so many sweeps with half a success before it was ever taken. */
const PRIOR_SWEEPS = 1000;
const PRIOR_WON = 0.5;
/** What was learnt counts less by this each time. */
const FADE = 0.99;

/** Chooses the way out that lately led to a shorter layout for the least work. */
export interface Escapes {
  /** Throws the layout in `sep` out of its valley. Pairs must be measured anew after it. */
  readonly take: () => void;
  /** What came of the way taken last, after so many sweeps; nothing is counted twice. */
  readonly tell: (won: boolean, sweeps: number) => void;
  readonly save: () => SavedEscapes;
}

export interface SavedEscapes {
  readonly won: readonly number[];
  readonly spent: readonly number[];
  /** The way taken that nothing was told of yet, or −1. */
  readonly open: number;
}

export const NO_ESCAPES: SavedEscapes = { won: WAYS.map(() => 0), spent: WAYS.map(() => 0), open: -1 };

export function escapes(strip: Strip, sep: Separation, random: Random, from: SavedEscapes): Escapes {
  const free = strip.itemShape.map((_, i) => i).filter((i) => !strip.pinned[i]);
  const won = Float64Array.from(from.won);
  const spent = Float64Array.from(from.spent);
  let open = from.open;
  const rate = (k: number): number => (won[k]! + PRIOR_WON) / (spent[k]! + PRIOR_SWEEPS);
  return {
    take() {
      if (free.length === 0) return;
      let sum = 0;
      for (let k = 0; k < WAYS.length; k++) sum += rate(k);
      let at = random.next() * sum;
      open = 0;
      while (open < WAYS.length - 1 && at >= rate(open)) at -= rate(open++);
      WAYS[open]!({ strip, sep, random, free });
    },
    tell(success, sweeps) {
      if (open < 0) return;
      for (let k = 0; k < WAYS.length; k++) {
        won[k] = won[k]! * FADE;
        spent[k] = spent[k]! * FADE;
      }
      if (success) won[open] = won[open]! + 1;
      spent[open] = spent[open]! + sweeps;
      open = -1;
    },
    save: () => ({ won: [...won], spent: [...spent], open }),
  };
}
