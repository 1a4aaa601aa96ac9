import { called, findingMaker, t, type Phrase } from '../garment/index.ts';

/** The sentences of what the desk itself has to say. */
export const DESK_WORDS = {
  'wearer-assumed': ({ wearer }: { wearer: string }): Phrase =>
    t`A table of measures does not say whose they are: taken for a ${called(wearer)}’s. Say so if they are not, for what is usual differs.`,
};

export const deskFinding = findingMaker(DESK_WORDS);
