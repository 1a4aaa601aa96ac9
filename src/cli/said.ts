import {
  isPhrase,
  renderPhrase,
  t,
  phraseOf,
  type Finding,
  type Phrase,
  type Tell,
  type WordsTable,
} from '../garment/index.ts';
import { ROOM_WORDS, sizeWord } from '../pipeline/index.ts';
import { DESK_WORDS } from '../desk/index.ts';
import { CLI_WORDS } from './words-table.ts';

const words: WordsTable = Object.assign({}, ...ROOM_WORDS, DESK_WORDS, CLI_WORDS);

/** What a finding says, before anybody says it; of one printed size among several, with the size. */
export function findingPhrase({ code, values, where: { size } }: Finding): Phrase {
  const said = phraseOf(words, code, values);
  return size === undefined ? said : t`${sizeWord(size)}: ${said}`;
}

/** What a finding says to one person. */
export const say = (finding: Finding, tell: Tell): string => renderPhrase(findingPhrase(finding), tell);

const isFinding = (value: object): value is Finding =>
  'code' in value && 'severity' in value && 'values' in value;

/**
 * An answer for programs: sentences are made, and a finding carries its sentence beside its code and its values, so that a reader
 * of JSON needs no tables of ours.
 */
export function saidJson(value: unknown, tell: Tell): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (isPhrase(value)) return renderPhrase(value, tell);
  if (Array.isArray(value)) return value.map((v) => saidJson(v, tell));
  const said = Object.fromEntries(Object.entries(value).map(([key, v]) => [key, saidJson(v, tell)]));
  return isFinding(value) ? { ...said, message: say(value, tell) } : said;
}
