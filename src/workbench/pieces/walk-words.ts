import { renderPhrase, t, tellIn, type Phrase } from '../../garment/index.ts';
import type { Walk } from '../../check/index.ts';
import { amountText } from '../parts/amount.tsx';

const MEANT: Readonly<Record<'eased' | 'gathered', Phrase>> = { eased: t`Ease`, gathered: t`Fullness` };

/** By how much the resting side is meant to be longer; nothing to say of a plain seam. The same fraction as the walk beside it. */
export function meantWords({ seam, least, most }: Walk, show: 'in' | 'cm'): string | null {
  const { kind } = seam.join;
  if (kind === 'plain') return null;
  const [from, to] = [least, most].map((mm) => amountText(mm, show, { in: 16 }));
  const what = renderPhrase(MEANT[kind], tellIn(show));
  return `${what} meant on the resting side: ${from === to ? to : `${from} to ${to}`}. Off by counts only what lies beyond that.`;
}
