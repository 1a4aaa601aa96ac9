import { LEVELS } from './level.ts';
import type { Finding, FindingValues, Severity } from './finding.ts';
import { MEASURES } from './measure/measure.ts';
import type { MeasureId } from './measure/measure-id.ts';
import { t, type Part, type Phrase } from './words/phrase.ts';
import { renderPhrase } from './words/render-phrase.ts';
import type { Tell } from './words/tell.ts';
import { word } from './words/word.ts';

/** One room's sentences: a code, and how its values are said. */
export type WordsTable = Readonly<Record<string, (values: never) => Phrase>>;

/** The values a code must be given. */
export type ValuesOf<T extends WordsTable, C extends keyof T> =
  Parameters<T[C]> extends [infer V] ? V : Readonly<Record<string, never>>;

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

/** A code with its values as a phrase; a code that the table lacks is said as itself. */
export function phraseOf(table: WordsTable, code: string, values: FindingValues | undefined): Phrase {
  const row = Object.hasOwn(table, code) ? table[code] : undefined;
  return row ? row((values ?? {}) as never) : t`${word('code', code, code.replaceAll('-', ' '))}.`;
}

/** What a finding says to one person. */
export function sayFinding(table: WordsTable, finding: Finding, tell: Tell): string {
  return finding.message ?? renderPhrase(phraseOf(table, finding.code, finding.values), tell);
}

/** A level by its name: `high hip`. */
export const levelWord = (level: string): Part & object =>
  word('level', level, LEVELS.find((l) => l.level === level)?.name ?? level);

/** A measure by its name: `bust girth`. */
export const measureWord = (id: MeasureId): Part & object => word('measure', id, MEASURES[id].name);
