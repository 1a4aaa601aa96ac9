import type { FindingValues } from './words/table.ts';

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
  readonly message: string;
  /** What its sentence says, where a room's table of words makes it. */
  readonly values?: FindingValues;
}

/** The place in words: `sizes.csv, row 3, column 2 (value)`. Empty when nothing is known. */
function sayPlace(where: InputPlace): string {
  const parts: string[] = [];
  if (where.file !== undefined) parts.push(where.file);
  if (where.row !== undefined) parts.push(`row ${where.row}`);
  if (where.column !== undefined)
    parts.push(`column ${where.column}${where.field !== undefined ? ` (${where.field})` : ''}`);
  if (where.path !== undefined) parts.push(where.path === '' ? 'the whole document' : where.path);
  return parts.join(', ');
}

function sayProblem(problem: InputProblem): string {
  const place = sayPlace(problem.where);
  return place === '' ? problem.message : `${place}: ${problem.message}`;
}

/**
 * Input that cannot be used. Thrown at the doors only, with every problem found there (a table is read to its end
 * so that a person mends it in one go); `code` and `where` are the first one's. Nothing has been saved when it is thrown.
 */
export class InputError extends Error {
  readonly code: string;
  readonly where: InputPlace;
  readonly problems: readonly InputProblem[];

  constructor(first: InputProblem, more: readonly InputProblem[] = []) {
    super([first, ...more].map(sayProblem).join('\n'));
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
