import { t, len, type Phrase } from '../../garment/index.ts';
import { inch, lengthParam } from '../entry/param.ts';
import type { Param } from '../entry/alteration.ts';

/** What every bust alteration asks for: half of what is missing all round (trade.md 5.10). */
export const bustWidth: Param = lengthParam('width', t`wider at the bust, on each half`, {
  default: inch(0.5),
  min: -40,
  max: 60,
  limit: {
    most: inch(1),
    say: t`More than ${len(inch(2))} all round in one go: choose a larger size and narrow the shoulders, or add a second dart.`,
    source: 'docs/trade.md 5.10 (memory)',
  },
});

export const BUST_REACH = [
  t`front, its lining and facing`,
  t`centre front gets longer: facing, button band and its spacing`,
  t`waist seam of the front, or its dart`,
  t`side seam and armhole keep their length`,
] as const;

export const sayBust = (mm: number): Phrase =>
  t`${mm < 0 ? t`smaller` : t`larger`} bust, ${len(Math.abs(mm))} on each half (${len(Math.abs(2 * mm))} all round)`;
