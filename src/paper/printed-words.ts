import {
  called,
  eachIn,
  len,
  lenAs,
  listOf,
  MM_PER,
  t,
  type DrawnPiece,
  type InnerLine,
  type Phrase,
  type Tell,
} from '../garment/index.ts';

/** What stands printed on the pages. What follows the sign · is a list: title, size, whose, when. */

/** Words side by side on one line. */
export const beside = (parts: readonly (Phrase | null)[]): Phrase =>
  parts.filter((p) => p !== null).reduce((all, p) => t`${all} · ${p}`);

/** Length of the longer ruler in the person's own unit, mm. */
export const longRuler = ({ unit }: Tell): number => (unit === 'in' ? 8 * MM_PER.in : 200);

/** How to see that the print is true; the bounds are those of trade.md 7.7 (half a millimetre in a hundred). */
export const measureFirst = (tell: Tell): readonly Phrase[] => [
  t`Print at 100 % (actual size), with “fit to page” switched off. Then measure before cutting:`,
  t`both squares and both rulers, across and up. A printer can be right across and wrong down.`,
  // 1/32 in is the finest line of a tape, and finer than other lengths are told.
  t`If the longer ruler (${lenAs(longRuler(tell), tell.unit === 'in' ? 'in' : 'mm')}) is off by more than ${eachIn(called('1/32 in'), lenAs(1, 'mm'))}, do not cut: the garment would be off by ${eachIn(lenAs(MM_PER.in / 4, 'in'), lenAs(5, 'mm'))} round the body.`,
];

/** How tiles become one sheet. */
export const HOW_TO_JOIN: readonly Phrase[] = [
  t`Trim only the left and the top of each page, on the solid line. Lay it over the page before it, up to the dashed line, so that the marks meet.`,
  t`Pages that hold no part of a piece are left out; the map shows the ones there are.`,
];

/** In a test square. It keeps its own unit: whoever owns only the other tape can check with one of the two. */
export const squareWords = (side: number, unit: 'mm' | 'in'): readonly Phrase[] => [
  t`${lenAs(side, unit)}`,
  t`across and up`,
];

/** Over the key of lines. */
export const KEY_HEAD = t`Lines`;

/** A page by its label: the map, or a tile or a number. */
export const pageName = (label: string): Phrase => (label === 'map' ? t`map` : t`${called(label)}`);
export const forPerson = (person: string): Phrase => t`for ${called(person)}`;
export const pageOf = (page: number, pages: number): Phrase => t`page ${page} of ${pages}`;
export const trimWords = (other: string): Phrase => t`trim here, then lay on ${called(other)}`;
export const layWords = (other: string): Phrase => t`lay ${called(other)} up to this line`;

/** Along the bracket of a fold edge. */
export const FOLD_WORDS = t`place on the fold of the cloth`;

/** On a lengthen-or-shorten line: what fits of these. */
export const ADJUST_WORDS: readonly Phrase[] = [t`lengthen or shorten here`, t`lengthen · shorten`];

const INNER: Readonly<Partial<Record<InnerLine<'one'>['kind'], Phrase>>> = {
  fold: t`fold`,
  placement: t`place here`,
  stitch: t`stitch here`,
};
/** On a line inside of a piece: what to do there, after its name where it has one. */
export function innerWords(line: InnerLine<'one'>): Phrase {
  const what = INNER[line.kind] ?? t``;
  return line.id === line.kind ? what : t`${called(line.id.replaceAll('-', ' '))}: ${what}`;
}

const KINDS = [
  ['seam', t`seams`],
  ['hem', t`hem`],
  ['opening', t`opening`],
  ['free', t`other edges`],
] as const;

/** What the cutting line includes: `Included: seams 15 mm, hem 30 mm`; several widths of a kind are told as a range. */
export function allowanceWords(piece: DrawnPiece, included: boolean): Phrase {
  if (!included) return t`No allowances: add them outside of this line`;
  const parts = KINDS.flatMap(([kind, word]): Phrase[] => {
    const widths = piece.edges.filter((e) => e.kind === kind).map((e) => e.allowance);
    const [least, most] = [Math.min(...widths), Math.max(...widths)];
    if (widths.length === 0 || most === 0) return [];
    return [t`${word} ${least === most ? t`${len(most)}` : t`${len(least)} to ${len(most)}`}`];
  });
  return parts.length === 0 ? t`No allowances needed` : t`Included: ${listOf(parts)}`;
}
