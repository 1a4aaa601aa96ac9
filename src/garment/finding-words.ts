import { levelName } from './level-name.ts';
import type { Finding, Severity } from './finding.ts';
import type { Part } from './words/phrase.ts';
import { phraseOf, type FindingValues, type ValuesOf, type WordsTable } from './words/table.ts';
import { renderPhrase } from './words/render-phrase.ts';
import type { Tell } from './words/tell.ts';
import { word } from './words/word.ts';

/** Makes a room's findings. The compiler asks of each code the values that its sentence says. */
export type MakeFinding<T extends WordsTable> = <C extends keyof T & string>(
  code: C,
  severity: Severity,
  where: Finding['where'],
  values: ValuesOf<T, C>,
  more?: Pick<Finding, 'amount' | 'remedy'>,
) => Finding;

/** @param _table the room's words, for their types */
export const findingMaker =
  <T extends WordsTable>(_table: T): MakeFinding<T> =>
  (code, severity, where, values, more = {}) => ({
    code,
    severity,
    where,
    ...more,
    values: values as FindingValues,
  });

/** What a finding says to one person. */
export function sayFinding(table: WordsTable, finding: Finding, tell: Tell): string {
  return renderPhrase(phraseOf(table, finding.code, finding.values), tell);
}

/** A level by its name: `high hip`. */
export const levelWord = (level: string): Part & object => word('level', level, levelName(level));
