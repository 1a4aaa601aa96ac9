import { called, calledAll, findingMaker, t } from '../garment/index.ts';

/** The sentences of this room. */
export const PAPER_WORDS = {
  tiled: ({ piece, paper }: { piece: string; paper: string }) =>
    t`${called(piece)} is larger than one page of ${called(paper)}: the pages are to be joined.`,
  'letters-replaced': ({ letters }: { letters: readonly string[] }) =>
    t`The printed words lack some letters and show plain ones instead: ${calledAll(letters)}.`,
};

export const paperFinding = findingMaker(PAPER_WORDS);
