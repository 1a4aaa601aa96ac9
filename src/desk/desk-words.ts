import { called, countOf, findingMaker, problemMaker, t, type Phrase } from '../garment/index.ts';

/** The sentences of what the desk itself has to say. */
export const DESK_WORDS = {
  'wearer-assumed': ({ wearer }: { wearer: string }): Phrase =>
    t`A table of measures does not say whose they are: taken for a ${called(wearer)}’s. Say so if they are not, for what is usual differs.`,
  'pins-left-out': ({ count }: { count: number }): Phrase =>
    t`${countOf(count, t`pinned piece was`, t`pinned pieces were`)} put down for another lay of this cloth, and may lie anywhere in this one.`,
  'unknown-document': (): Phrase => t`This is not a fitting, a pattern or a person saved by Pintrue.`,
};

export const deskProblem = problemMaker(DESK_WORDS);
export const deskFinding = findingMaker(DESK_WORDS);
