import { shownLength, writeLength, writeLeast, type LengthStyle } from './write-length.ts';

/** One figure of a sum: so many times so many mm; once when not said. */
export interface Term {
  readonly mm: number;
  readonly times?: number;
}

/** A figure as it is shown. `about`: as written it is not exact, and the text begins with `≈`, or with `<` where it would be nothing as written. */
export interface Shown {
  readonly text: string;
  readonly about: boolean;
}

/** Two lengths that nobody could tell apart on a tape. mm */
const SAME = 0.01;

/** Whether terms as they are written make the total as it is written. */
export const readsExact = (total: number, terms: readonly Term[], shown: (mm: number) => number): boolean => {
  const sum = terms.reduce((all, { mm, times = 1 }) => all + shown(mm) * times, 0);
  return Math.abs(sum - shown(total)) < SAME;
};

/**
 * The figures of `total = Σ times × term` as they are shown, so that nobody takes a rounding for a sum: where the terms as written do not
 * make the total as written, each term that was rounded is marked `≈`: 7/8 in = 6 × ≈ 1/8 in. The total itself is shown plainly.
 * @param total mm @param terms mm; unrounded, their sum is the total
 */
export function addUp(
  total: number,
  terms: readonly Term[],
  style: LengthStyle,
): { readonly total: Shown; readonly terms: readonly Shown[] } {
  const shown = (mm: number): number => shownLength(mm, style);
  const exact = readsExact(total, terms, shown);
  return {
    total: { text: writeLength(total, style), about: false },
    terms: terms.map(({ mm }) => {
      const about = !exact && Math.abs(shown(mm) - mm) >= SAME;
      const text = writeLength(mm, style);
      return { text: !about ? text : shown(mm) === 0 ? `< ${writeLeast(style)}` : `≈ ${text}`, about };
    }),
  };
}
