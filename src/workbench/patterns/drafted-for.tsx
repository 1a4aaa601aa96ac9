import { garmentKind, type Pattern } from '../../garment/index.ts';
import { amountText } from '../parts/amount.tsx';

/** For whom, for which cloth and for which bust a pattern is drafted, in one sentence. */
export function DraftedFor({ pattern, show }: { pattern: Pattern; show: 'in' | 'cm' }) {
  const { cloth, bustDifference } = pattern;
  const of =
    cloth.kind === 'woven'
      ? 'a woven cloth'
      : `a knit that stretches by ${Math.round(cloth.stretch * 100)} %`;
  const bust =
    bustDifference === undefined
      ? ''
      : `; the full bust is ${amountText(bustDifference, show)} more than the upper bust`;
  return (
    <p>
      Drafted as {garmentKind(pattern.garment).called} for a {pattern.wearer}, of {of}
      {bust}.
    </p>
  );
}
