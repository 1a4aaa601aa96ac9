import { MM_PER, type ClothNeed, type Phrase } from '../../garment/index.ts';
import { USUAL_ALLOWANCES, type Asked } from '../../exchange/index.ts';
import { amountText } from '../parts/amount.tsx';
import type { Wearer } from './import-questions.ts';

/** One answer to choose. */
export interface Choice<T> {
  readonly value: T;
  readonly words: string;
  /** The file's own words for it, where it says so itself: offered first. */
  readonly evidence?: Phrase;
}

/** An allowance as it is printed: sixteenths of an inch as a fraction, anything else in centimetres or, below one, millimetres. */
export function allowanceWords(mm: number): string {
  const sixteenths = (mm / MM_PER.in) * 16;
  if (Math.abs(sixteenths - Math.round(sixteenths)) < 1e-6) return amountText(mm, 'in', { in: 16 });
  return mm < 10 ? `${Math.round(mm * 10) / 10} mm` : `${Math.round(mm) / 10} cm`;
}

const cutting = (mm: number): string => `Cutting lines, ${allowanceWords(mm)} of allowance inside them`;
const STITCHING = 'Stitching lines, allowance is added outside them';
export const BOTH = 'Both, in two kinds of line: the outer one is cut, the inner one stitched';

/** What the printed lines may be; mm of allowance inside them, 0 for stitching lines. `doubled`: what the file offers is seen from two lines. */
export function linesChoices(asked: Asked<number>, doubled: boolean): readonly Choice<number>[] {
  const usual = [
    ...USUAL_ALLOWANCES.map((value) => ({ value, words: cutting(value) })),
    { value: 0, words: STITCHING },
  ];
  const all = offeredFirst(usual, asked, (a, b) => Math.abs(a - b) < 0.05, cutting);
  if (!doubled || asked.offered === null) return all;
  return [{ ...all[0]!, words: `${BOTH}, mostly ${allowanceWords(asked.offered)} apart` }, ...all.slice(1)];
}

const share = (stretch: number): string => `${Math.round(stretch * 100)} %`;
const knit = (stretch: number, words: string): Choice<ClothNeed> => ({
  value: { kind: 'knit', stretch },
  words: `A knit, ${words}: it stretches by ${share(stretch)}`,
});

export const sameCloth = (a: ClothNeed, b: ClothNeed): boolean =>
  a.kind === 'knit' && b.kind === 'knit' ? Math.abs(a.stretch - b.stretch) < 0.005 : a.kind === b.kind;

/** Cloths by how far they stretch; the classes of knits are those of docs/trade.md 3.5. */
export const clothChoices = (asked: Asked<ClothNeed>): readonly Choice<ClothNeed>[] =>
  offeredFirst<ClothNeed>(
    [
      { value: { kind: 'woven' }, words: 'A woven cloth, which does not stretch' },
      knit(0.18, 'firm'),
      knit(0.25, 'moderate'),
      knit(0.5, 'stretchy'),
      knit(1, 'very stretchy'),
    ],
    asked,
    sameCloth,
    (cloth) =>
      cloth.kind === 'woven' ? 'A woven cloth' : `A knit that stretches by ${share(cloth.stretch)}`,
  );

export const wearerChoices = (asked: Asked<Wearer>): readonly Choice<Wearer>[] =>
  offeredFirst(
    [
      { value: 'woman', words: 'A woman' },
      { value: 'man', words: 'A man' },
      { value: 'child', words: 'A child' },
    ],
    asked,
    (a, b) => a === b,
    (who) => who,
  );

/** Letters of cups, one inch of difference each, A the first (common practice; letters differ between makers). */
const CUPS = ['A', 'B', 'C', 'D', 'DD'];

/** Differences between full and upper bust, mm; null: not known. */
export const bustChoices = (asked: Asked<number>, show: 'in' | 'cm'): readonly Choice<number | null>[] =>
  offeredFirst<number | null>(
    [
      { value: null, words: 'Not known' },
      ...CUPS.map((cup, i) => ({
        value: (i + 1) * MM_PER.in,
        words: `${cup} cup: ${amountText((i + 1) * MM_PER.in, show)}`,
      })),
    ],
    asked,
    (a, b) => a === b || (a !== null && b !== null && Math.abs(a - b) < 0.5),
    (mm) => `A difference of ${amountText(mm ?? 0, show)}`,
  );

/** The usual answers, what the file itself says before them: moved there where it is a usual one, else added. */
function offeredFirst<T>(
  usual: readonly Choice<T>[],
  { offered, evidence }: Asked<T>,
  same: (a: T, b: T) => boolean,
  say: (value: T) => string,
): readonly Choice<T>[] {
  if (offered === null) return usual;
  const known = usual.find(({ value }) => same(value, offered));
  return [
    { value: known?.value ?? offered, words: known?.words ?? say(offered), evidence },
    ...usual.filter((choice) => choice !== known),
  ];
}
