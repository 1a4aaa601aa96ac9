import type { Change } from '../check/index.ts';
import {
  called,
  calledAll,
  countOf,
  degrees,
  fineLen,
  len,
  plural,
  t,
  type Part,
  type Phrase,
} from '../garment/index.ts';

/** What is told of a step done or taken back. Pieces, edges and seams by their ids, as they are typed. */

/** Where seams are compared: to hundredths of a millimetre, what rounds to nothing without a sign. */
export const difference = (mm: number): Part & object => fineLen(Math.round(mm * 100) / 100 || 0);

/** One thing that truing did. */
export function changeWords(c: Change): Phrase {
  if (c.kind === 'seam')
    return t`seam ${called(c.seam)}: ${len(c.before.a)} and ${len(c.before.b)} become ${len(c.after.a)} and ${len(c.after.b)}`;
  if (c.kind === 'band') return t`band ${called(c.piece)}: ${len(c.before)} becomes ${len(c.after)}`;
  if (c.kind === 'notch')
    return t`notch ${called(c.notch)} on ${called(c.piece)}, ${called(c.edge)}: from ${len(c.before)} to ${len(c.after)}`;
  if (c.kind === 'corner')
    return t`${called(c.piece)}, ${called(c.edge)} at ${called(c.joint)}: turned by ${degrees(c.before, 1)}, now by ${degrees(c.after, 1)}`;
  return t`dart ${called(c.dart)} of ${called(c.piece)}: its legs differed by ${difference(c.before)}, now by ${difference(c.after)}`;
}

export const SEAMS_HEAD: readonly Phrase[] = [
  t`seam`,
  t`sides before`,
  t``,
  t`sides after`,
  t``,
  t`off by, before`,
  t`after`,
];
export const GIRTHS_HEAD: readonly Phrase[] = [t`level`, t`girth before`, t`after`, t`target`];

export const NO_SEAM_CHANGED = t`No seam changed its length.`;
export const TRUED = t`All seams are trued at the end already: nothing to do.`;
export const changedWords = (pieces: readonly string[]): Phrase => t`Changed: ${calledAll(pieces)}.`;
/** Findings that were there before. */
export const stoodWords = (n: number): Phrase =>
  t`${countOf(n, t`older remark`, t`older remarks`)} ${plural(n, t`stands`, t`stand`)}; ${called('pintrue check')} tells all.`;
export const wroteWords = (file: string | undefined): Phrase =>
  file === undefined ? t`Nothing was written.` : t`Wrote ${called(file)}.`;

/** A step that can't be done. */
export const notDone = (sentence: Phrase): readonly Phrase[] => [
  t`Not done: ${sentence}.`,
  t`Nothing was changed and nothing was written.`,
];
