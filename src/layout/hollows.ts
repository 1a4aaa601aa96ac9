/**
 * Where each form lately met least. Copies of one shape seek the same hollows, and most of a layout stands still from one move to the next:
 * what one copy came upon is tried by all.
 */
export interface Hollows {
  /** Places held per form. */
  readonly held: number;
  /** Of form f: from f · held on; NaN where nothing is known yet. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Remembers a place of form f in the stead of one close by, else of the oldest. */
  readonly remember: (f: number, x: number, y: number) => void;
  readonly save: () => SavedHollows;
}

/** As plain data: of each form, x and y in turn, and which is overwritten next. */
export interface SavedHollows {
  readonly places: readonly (readonly number[])[];
  readonly next: readonly number[];
}

export const NO_HOLLOWS: SavedHollows = { places: [], next: [] };

const HELD = 24;

/** @param close two places nearer than this along both axes are one. */
export function hollows(forms: number, close: number, from: SavedHollows): Hollows {
  const x = new Float64Array(forms * HELD).fill(NaN);
  const y = new Float64Array(forms * HELD).fill(NaN);
  const next = new Int32Array(forms);
  next.set(from.next);
  from.places.forEach((places, f) => {
    for (let k = 0; 2 * k < places.length; k++) {
      x[f * HELD + k] = places[2 * k]!;
      y[f * HELD + k] = places[2 * k + 1]!;
    }
  });
  return {
    held: HELD,
    x,
    y,
    remember(f, px, py) {
      let k = f * HELD;
      const end = k + HELD;
      while (k < end && !(Math.abs(x[k]! - px) < close && Math.abs(y[k]! - py) < close)) k++;
      if (k === end) {
        k = f * HELD + next[f]!;
        next[f] = (next[f]! + 1) % HELD;
      }
      x[k] = px;
      y[k] = py;
    },
    save: () => ({
      // Filled from the first on, so what is unknown is all at the end.
      places: Array.from({ length: forms }, (_, f) => {
        const places: number[] = [];
        for (let k = f * HELD; k < (f + 1) * HELD && x[k] === x[k]; k++) places.push(x[k]!, y[k]!);
        return places;
      }),
      next: [...next],
    }),
  };
}
