import {
  called,
  calledAll,
  findingMaker,
  InputError,
  len,
  phraseOf,
  t,
  type FindingValues,
  type Phrase,
  type ValuesOf,
} from '../garment/index.ts';

/** The sentences of this room. */
export const PAPER_WORDS = {
  tiled: ({ piece, paper }: { piece: string; paper: Phrase }) =>
    t`${called(piece)} is larger than one page of ${paper}: the pages are to be joined.`,
  'letters-replaced': ({ letters }: { letters: readonly string[] }) =>
    t`The printed words lack some letters and show plain ones instead: ${calledAll(letters)}.`,
  'paper-unknown': ({ paper, known }: { paper: string; known: readonly string[] }) =>
    t`“${called(paper)}” is no paper known here. There are ${calledAll(known)}, ${called('roll-WIDTH')} in inches (${called('roll-36')}), or ${called('WIDTHxHEIGHT')} in mm (${called('900x1500')}).`,
  'paper-size': ({ paper, least, most }: { paper: string; least: number; most: number }) =>
    t`“${called(paper)}”: paper sides must be between ${len(least)} and ${len(most)}.`,
  'piece-unknown': ({ piece, known }: { piece: string; known: readonly string[] }) =>
    t`There is no piece “${called(piece)}”. There are ${calledAll(known)}.`,
  'nothing-to-print': () => t`No piece is asked for.`,
};

type Code = 'paper-unknown' | 'paper-size' | 'piece-unknown' | 'nothing-to-print';

/** What was asked of the printer and cannot be had. */
export function paperProblem<C extends Code>(
  code: C,
  field: 'paper' | 'pieces',
  values: ValuesOf<typeof PAPER_WORDS, C>,
): InputError {
  const said = values as FindingValues;
  return new InputError({ code, where: { field }, message: phraseOf(PAPER_WORDS, code, said), values: said });
}

export const paperFinding = findingMaker(PAPER_WORDS);
