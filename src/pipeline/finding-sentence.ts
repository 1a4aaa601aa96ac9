import { ALTER_WORDS } from '../alter/index.ts';
import { EXCHANGE_WORDS } from '../exchange/index.ts';
import { PIPELINE_WORDS } from './words-table.ts';
import { PAPER_WORDS } from '../paper/index.ts';
import { LAYOUT_WORDS } from '../layout/index.ts';
import { CHECK_WORDS } from '../check/index.ts';
import { FIT_WORDS } from '../fit/index.ts';
import { QUESTION_WORDS, sayFinding, type Finding, type Tell, type WordsTable } from '../garment/index.ts';

/** Every room's sentences. No code is in two rooms. */
export const ROOM_WORDS: readonly WordsTable[] = [
  QUESTION_WORDS,
  FIT_WORDS,
  ALTER_WORDS,
  CHECK_WORDS,
  EXCHANGE_WORDS,
  LAYOUT_WORDS,
  PAPER_WORDS,
  PIPELINE_WORDS,
];

const all: WordsTable = Object.assign({}, ...ROOM_WORDS);

/** What a finding of any room below the faces says to one person. */
export const findingSentence = (finding: Finding, tell: Tell): string => sayFinding(all, finding, tell);
