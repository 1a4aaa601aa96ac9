import {
  called,
  capital,
  keyWord,
  len,
  t,
  type Cloth,
  type Fold,
  type Nap,
  type Part,
  type Phrase,
} from '../../garment/index.ts';

/** The words that stand on a drawn lay and on the pages of a projector. */

const LIES: Readonly<Record<Fold, Phrase>> = {
  none: t`open, in a single layer, right side up`,
  lengthwise: t`folded lengthwise, selvages together, right sides facing`,
  crosswise: t`folded crosswise, cut ends together`,
  partial: t`partly folded, one selvage turned in`,
  double: t`both selvages folded to the middle`,
};
const NAPS: Readonly<Record<Nap, Phrase>> = {
  'one-way': t`all tops one way (nap)`,
  'two-way': t`tops either way`,
  free: t`pieces turned freely`,
};
const AS = {
  single: t``,
  pair: t`, pair`,
  'on-fold': t`, on fold`,
  opened: t``,
} as const;

/** An edge of the cloth as it is spread. */
export type ClothEdge = 'selvage' | 'fold' | 'cut end';
export const edgeWord = (edge: ClothEdge): Part & object => keyWord('cloth edge', edge);

/** A piece as it lies: `3 Sleeve, pair`. */
export const lyingWords = (number: number, name: string, as: keyof typeof AS): Phrase =>
  t`${number} ${called(name)}${AS[as]}`;

/** The two measures of a grainline: how far it runs from an edge, and where its ends stand from the end of the cloth. mm */
export const grainWords = (
  fromEdge: number,
  edge: ClothEdge,
  ends: readonly [number, number],
  end: ClothEdge,
): readonly [Phrase, Phrase] => [
  t`${len(fromEdge)} from ${edgeWord(edge)}`,
  t`${len(ends[0])} and ${len(ends[1])} from ${edgeWord(end)}`,
];

interface Spread {
  readonly cloth: Cloth;
  readonly width: number;
  readonly length: number;
  readonly fold: Fold;
}

export const layTitle = ({ cloth, width, length }: Spread): Phrase =>
  t`Lay: ${keyWord('cloth', cloth)}, ${len(width)} wide, ${len(length)} long`;

/** How much cloth. */
export const layHead = ({ cloth, width, length }: Spread): Phrase =>
  t`${capital(t`${keyWord('cloth', cloth)}`)}: ${len(length)} of cloth ${len(width)} wide`;

/** How it lies, which way the pieces may lie, and what is kept between them. @param gap mm */
export const layHow = (fold: Fold, nap: Nap, gap: number): Phrase =>
  t`${capital(LIES[fold])}; ${NAPS[nap]}; ${len(gap)} between pieces`;

/** The two lines over the grid of the test page. @param side of a square, mm */
export const testPageWords = (side: number): readonly Phrase[] => [
  t`Each square ${len(side)}`,
  t`Both dashed lines equally long`,
];
export const PROJECTOR_TITLES = { testPage: t`Test page`, lay: t`Lay` } as const;
