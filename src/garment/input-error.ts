import { ToldError } from './told-error.ts';
import { called, listOf, t, type Phrase } from './words/phrase.ts';
import { renderPhrase } from './words/render-phrase.ts';
import { phraseOf, type FindingValues, type WordsTable } from './words/table.ts';
import { TELL_BOTH } from './words/tell.ts';

/** Where in the caller's input: file, CSV row and column (counted from 1, as a spreadsheet shows them) or a JSON path such as `pieces[2].edges[0].path`. */
export interface InputPlace {
  readonly file?: string;
  readonly row?: number;
  readonly column?: number;
  /** The column's heading or the field's name, when it has one. */
  readonly field?: string;
  readonly path?: string;
}

/** One thing that is wrong with an input. `code` is stable and kebab-case, `message` is for the person. */
export interface InputProblem {
  readonly code: string;
  readonly where: InputPlace;
  /** What is wrong and what to do. */
  readonly message: Phrase;
  /** What its sentence says, where a room's table of words makes it. */
  readonly values?: FindingValues;
}

/** Makes a room's problems. The compiler asks of each code the values that its sentence says. */
export const problemMaker =
  <T extends WordsTable>(table: T) =>
  <C extends keyof T & string>(code: C, where: InputPlace, ...[values]: Parameters<T[C]>): InputProblem => ({
    code,
    where,
    message: phraseOf(table, code, values),
    ...(values === undefined ? {} : { values }),
  });

/** The place in words: `sizes.csv, row 3, column 2 (value)`. Nothing when nothing is known. */
function placePhrase({ file, row, column, field, path }: InputPlace): Phrase | null {
  const parts = [
    file === undefined ? null : t`${called(file)}`,
    row === undefined ? null : t`row ${row}`,
    column === undefined ? null : t`column ${column}${field === undefined ? null : t` (${called(field)})`}`,
    path === undefined ? null : path === '' ? t`the whole document` : t`${called(path)}`,
  ].filter((part) => part !== null);
  return parts.length === 0 ? null : t`${listOf(parts)}`;
}

function problemPhrase({ where, message }: InputProblem): Phrase {
  const place = placePhrase(where);
  return place === null ? message : t`${place}: ${message}`;
}

/** Every problem on a line of its own. */
const problemsPhrase = (problems: readonly InputProblem[]): Phrase =>
  problems.map(problemPhrase).reduce((all, one) => t`${all}\n${one}`);

/**
 * Input that cannot be used. Thrown at the doors only, with every problem found there (a table is read to its end
 * so that a person mends it in one go); `code` and `where` are the first one's. Nothing has been saved when it is thrown.
 */
export class InputError extends ToldError {
  readonly code: string;
  readonly where: InputPlace;
  readonly problems: readonly InputProblem[];

  constructor(first: InputProblem, more: readonly InputProblem[] = []) {
    const phrase = problemsPhrase([first, ...more]);
    super(renderPhrase(phrase, TELL_BOTH), phrase);
    this.name = 'InputError';
    this.code = first.code;
    this.where = first.where;
    this.problems = [first, ...more];
  }

  /** The same news with the file's name added to every place. */
  inFile(file: string): InputError {
    const [first, ...more] = this.problems.map((p) => ({ ...p, where: { file, ...p.where } }));
    return new InputError(first!, more);
  }

  /** The same news from within a larger document: `at` before every path. */
  under(at: string): InputError {
    const [first, ...more] = this.problems.map((p) => {
      const { path } = p.where;
      return path === undefined
        ? p
        : { ...p, where: { ...p.where, path: path === '' ? at : `${at}.${path}` } };
    });
    return new InputError(first!, more);
  }
}
