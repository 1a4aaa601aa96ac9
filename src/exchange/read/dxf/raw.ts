import { REFUSAL_WORDS as NO } from '../../words/refusal-table.ts';
import { DxfError, type Pair } from './pairs.ts';

/** One entity's own pairs: from after its `0 KIND` to before the next `0`. */
export interface Raw {
  readonly kind: string;
  readonly pairs: readonly Pair[];
  readonly line: number;
}

/** Cuts the pairs of a section into its entities. */
export function raws(pairs: readonly Pair[], from: number, to: number): Raw[] {
  const found: Raw[] = [];
  let i = from;
  while (i < to) {
    const head = pairs[i]!;
    let end = i + 1;
    while (end < to && pairs[end]!.code !== 0) end++;
    if (head.code === 0)
      found.push({ kind: head.value.toUpperCase(), pairs: pairs.slice(i + 1, end), line: head.line });
    i = end;
  }
  return found;
}

/** Throws DxfError with the line where no number stands. */
export function number(pair: Pair): number {
  const value = Number(pair.value);
  if (pair.value === '' || !Number.isFinite(value)) {
    throw new DxfError(NO['dxf-no-number']({ says: pair.value.slice(0, 40) }), pair.line + 1);
  }
  return value;
}

export const field = (pairs: readonly Pair[], code: number): Pair | undefined =>
  pairs.find((p) => p.code === code);

export const fields = (pairs: readonly Pair[], code: number): Pair[] => pairs.filter((p) => p.code === code);

export const numberOf = (pair: Pair | undefined, otherwise: number): number =>
  pair ? number(pair) : otherwise;
