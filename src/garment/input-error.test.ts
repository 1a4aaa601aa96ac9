import { describe, expect, it } from 'vitest';
import { InputError, len, problemMaker, t, tellError, TELL_CM, TELL_IN } from './index.ts';

const problem = problemMaker({
  'too-long': ({ most }: { most: number }) => t`Longer than ${len(most)}.`,
  empty: () => t`Nothing is here.`,
});
const error = new InputError(problem('too-long', { row: 3, column: 2, field: 'value' }, { most: 254 }), [
  problem('empty', { path: '' }),
]).inFile('a.csv');

describe('what is wrong with an input', () => {
  it('is said in the unit of whoever reads, each problem with its place on its own line', () => {
    expect(tellError(error, TELL_IN)).toBe(
      'a.csv, row 3, column 2 (value): Longer than 10 in.\na.csv, the whole document: Nothing is here.',
    );
    expect(tellError(error, TELL_CM)).toContain('Longer than 25.4 cm.');
    expect(error.message).toContain('Longer than 254 mm (10 in).');
  });

  it('is a phrase to its last word, but for the names in it', () => {
    const shouted = tellError(error, { ...TELL_IN, letters: (words) => words.toUpperCase() });
    expect(shouted).toBe(
      'a.csv, ROW 3, COLUMN 2 (value): LONGER THAN 10 in.\na.csv, THE WHOLE DOCUMENT: NOTHING IS HERE.',
    );
  });

  it('keeps code and values, and stands under the path of a larger document', () => {
    expect(error.problems.map(({ code, values }) => ({ code, values }))).toEqual([
      { code: 'too-long', values: { most: 254 } },
      { code: 'empty', values: undefined },
    ]);
    expect(new InputError(problem('empty', { path: 'name' })).under('body').where.path).toBe('body.name');
  });
});
