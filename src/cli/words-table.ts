import { called, findingMaker, keyWord, t, type Phrase } from '../garment/index.ts';

/** The sentences of what the terminal itself has to say. */
export const CLI_WORDS = {
  'no-lay-found': (): Phrase => t`No lay was found in the time given. Give it longer, or loosen the repeat.`,
  'not-held': ({ format, what }: { format: string; what: string }): Phrase =>
    t`${called(format.toUpperCase())} can't hold ${keyWord('loss', what)}.`,
};

export const cliFinding = findingMaker(CLI_WORDS);
