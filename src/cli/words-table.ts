import { called, findingMaker, keyWord, t, type Phrase } from '../garment/index.ts';

/** The sentences of what the terminal itself has to say. */
export const CLI_WORDS = {
  'not-held': ({ format, what }: { format: string; what: string }): Phrase =>
    t`${called(format.toUpperCase())} can't hold ${keyWord('loss', what)}.`,
};

export const cliFinding = findingMaker(CLI_WORDS);
