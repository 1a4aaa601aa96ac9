// What goes wrong on the page is said by a table of words: no station throws a bare text, and none shows what an error says of itself.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ToldError, t, TELL_BOTH } from '../src/garment/index.ts';
import { asTold, pageError, tellTrouble } from '../src/workbench/words/fault.ts';
import { accented, bareIn, expectAllSaid, namesIn } from './second-language.test-case.ts';

const WORKBENCH = new URL('../src/workbench/', import.meta.url);
const sources = readdirSync(WORKBENCH, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.tsx?$/.test(path) && !/\.test(-case)?\.ts$/.test(path))
  // It alone looks inside an error.
  .filter((path) => path.replaceAll('\\', '/') !== 'words/fault.ts')
  .map((path) => ({ path, text: readFileSync(new URL(path, WORKBENCH), 'utf8') }));

/** Lines of the workbench that have this in them, with their file. */
const linesWith = (sign: RegExp): string[] =>
  sources.flatMap(({ path, text }) =>
    text
      .split('\n')
      .filter((line) => sign.test(line))
      .map((line) => `${path}: ${line.trim()}`),
  );

describe('trouble on the page', () => {
  it('is never thrown as a bare text', () => {
    expect(sources.length).toBeGreaterThan(100);
    expect(linesWith(/\bnew \w*Error\(|\bthrow ['"`]/)).toEqual([]);
  });

  it('is never shown as what an error says of itself', () => {
    expect(linesWith(/\b(?:e|err|error|reason|trouble|thrown|failed|fault)\)?\.message\b/)).toEqual([]);
  });

  it('that is foreseen is said in the person’s language and unit', () => {
    const far = pageError('photo-heavy', { pixels: 52_400_000, most: 40_000_000 });
    expectAllSaid([far.phrase], 0);
    expect(far.message).toBe(
      'The picture has 52 million pixels; up to 40 million can be traced. Scan it at fewer dots per inch.',
    );
    const reader = new ToldError('in', t`Too far by ${{ mm: 25.4 }}.`);
    expect(asTold(reader)).toBe(reader);
    expect(tellTrouble(reader, { unit: 'in' })).toBe('Too far by 1 in.');
  });

  it.each([
    ['an error of the browser', new DOMException('The source image could not be decoded.')],
    ['a slip of ours', new TypeError("Cannot read properties of undefined (reading 'x')")],
    ['a text', 'Uncaught RangeError: offset'],
    ['nothing', undefined],
  ])('that nobody foresaw is called ours, and only quoted: %s', (_, thrown) => {
    const { phrase } = asTold(thrown);
    const quoted = thrown instanceof Error ? thrown.message : String(thrown);
    expect(namesIn(phrase)).toEqual([quoted]);
    expect(tellTrouble(thrown, TELL_BOTH)).toMatch(/^That is our fault, not yours\./);
    const said = tellTrouble(thrown, accented('cm')).replace(quoted, '');
    expect(bareIn(said, 'cm')).toEqual([]);
  });
});
