import { inch, lengthParam } from '../entry/param.ts';
import type { Param } from '../entry/alteration.ts';
import { say } from '../../garment/index.ts';

/** What every bust alteration asks for: half of what is missing all round (trade.md 5.10). */
export const bustWidth: Param = lengthParam('width', 'wider at the bust, on each half', {
  default: inch(0.5),
  min: -40,
  max: 60,
  limit: {
    most: inch(1),
    say: 'More than 2 in all round in one go: choose a larger size and narrow the shoulders, or add a second dart.',
    source: 'docs/trade.md 5.10 (memory)',
  },
});

export const BUST_REACH = [
  'front, its lining and facing',
  'centre front gets longer: facing, button band and its spacing',
  'waist seam of the front, or its dart',
  'side seam and armhole keep their length',
] as const;

export const sayBust = (mm: number): string =>
  `${mm < 0 ? 'smaller' : 'larger'} bust, ${say(Math.abs(mm))} on each half (${say(Math.abs(2 * mm))} all round)`;
