import { sayFinding, type Finding, type Tell, type WordsTable } from '../garment/index.ts';

/** Every room's sentences. No code is in two rooms. */
export const ROOM_WORDS: readonly WordsTable[] = [];

const all: WordsTable = Object.assign({}, ...ROOM_WORDS);

/** What a finding of any room below the faces says to one person. */
export const findingSentence = (finding: Finding, tell: Tell): string => sayFinding(all, finding, tell);
