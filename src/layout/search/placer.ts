import { kernelMemory } from './kernel-memory.ts';
import type { Random } from './random.ts';
import type { Strip } from './strip.ts';

/** Where every item stands. Typed arrays, changed in place by the search and copied to keep. */
export interface Places {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly form: Int32Array;
}

/** The place found: position, form, its weighted cost. */
export interface Found {
  x: number;
  y: number;
  form: number;
  cost: number;
}

/** How hard one move looks. */
export interface MoveEffort {
  /** Samples over the whole strip, per form. */
  readonly wide: number;
  /** Samples about the present place, per form. */
  readonly near: number;
  /** Of all samples of a form, how many are walked downhill: at most eight. */
  readonly walked: number;
}

/** A move in a sweep, beside the hollows its form is known to have: with those a third of the samples does more than all of them did without. */
export const EFFORT: MoveEffort = { wide: 8, near: 6, walked: 3 };

/** Where each form lately met least, as plain data: of each form, x and y in turn, and which is overwritten next. */
export interface SavedHollows {
  readonly places: readonly (readonly number[])[];
  readonly next: readonly number[];
}

export const NO_HOLLOWS: SavedHollows = { places: [], next: [] };

/** Looks for places that cost less: a weight for each pair in conflict times how deep they lie in each other. The work is done by the kernel. */
export interface Placer {
  /** To be changed by `put`; whoever changes it otherwise calls `renew` after it. */
  readonly places: Places;
  /** i · n + j, both ways; nothing weighs against itself. */
  readonly weights: Float32Array;
  /** The one source of chance of the search. */
  readonly random: Random;
  /** Sets the length of the strip, and says that any piece may have been moved. */
  readonly renew: (length: number) => void;
  readonly put: (i: number, to: Found) => void;
  /** How deep i and j lie in each other as they stand, grown by the clearance; 0 where they are free. */
  readonly pairDepth: (i: number, j: number) => number;
  /** Looks for a cheaper place for item i than `found` already holds; true when it found one (written into `found`). */
  readonly seek: (i: number, effort: MoveEffort, found: Found) => boolean;
  /** As `seek`, but only for places that have the middle of the item's box at (cx, cy) or close by; quick, and no hollow is learnt from it. */
  readonly seekBeside: (i: number, cx: number, cy: number, found: Found) => boolean;
  readonly saveHollows: () => SavedHollows;
}

/**
 * @param chance the state of its random numbers.
 * @param clear free is free by at least this.
 */
export function placer(
  strip: Strip,
  chance: readonly number[],
  clear: number,
  hollows: SavedHollows,
): Placer {
  const kernel = kernelMemory(strip, clear);
  const { calls, held, hollowX, hollowY, hollowNext } = kernel;
  const places: Places = { x: kernel.placeX, y: kernel.placeY, form: kernel.placeForm };
  kernel.random.set(chance);
  hollowX.fill(NaN);
  hollowNext.set(hollows.next);
  hollows.places.forEach((known, f) => {
    for (let k = 0; 2 * k < known.length; k++) {
      hollowX[f * held + k] = known[2 * k]!;
      hollowY[f * held + k] = known[2 * k + 1]!;
    }
  });
  const told = (better: number, found: Found): boolean => {
    if (better === 0) return false;
    found.x = kernel.found[0]!;
    found.y = kernel.found[1]!;
    found.cost = kernel.found[2]!;
    found.form = kernel.foundForm[0]!;
    return true;
  };
  return {
    places,
    weights: kernel.weights,
    random: {
      next: calls.next,
      below: (n) => Math.floor(calls.next() * n),
      state: () => [...kernel.random],
    },
    renew(length) {
      calls.setLength(length);
      calls.allMoved();
    },
    put(i, to) {
      places.x[i] = to.x;
      places.y[i] = to.y;
      places.form[i] = to.form;
      calls.moved(i);
    },
    pairDepth: calls.pairDepth,
    seek(i, effort, found) {
      kernel.found[2] = found.cost;
      return told(calls.seek(i, effort.wide, effort.near, effort.walked), found);
    },
    seekBeside(i, cx, cy, found) {
      kernel.found[2] = found.cost;
      return told(calls.seekBeside(i, cx, cy), found);
    },
    saveHollows: () => ({
      // Filled from the first on, so what is unknown is all at the end.
      places: strip.forms.map((_, f) => {
        const known: number[] = [];
        for (let k = f * held; k < (f + 1) * held && hollowX[k] === hollowX[k]; k++)
          known.push(hollowX[k]!, hollowY[k]!);
        return known;
      }),
      next: [...hollowNext],
    }),
  };
}
