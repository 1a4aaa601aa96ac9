import { describe, expect, it } from 'vitest';
import { openBytes } from '../src/desk/index.ts';
import {
  DOCUMENT_WORDS,
  InputError,
  isPhrase,
  LENGTH_WORDS,
  phraseOf,
  renderPhrase,
  SHEET_WORDS,
  tellError,
  TELL_CM,
  TELL_IN,
  type FindingValues,
  type WordsTable,
} from '../src/garment/index.ts';
import { damaged, type Damaged } from './damaged.ts';
import { expectAllSaid, namesIn } from './second-language.test-case.ts';

/** Tables of what is thrown: each problem carries its phrase, so that a code may stand in several. */
const TABLES: Readonly<Record<string, WordsTable>> = { DOCUMENT_WORDS, SHEET_WORDS, LENGTH_WORDS };

const bytesOf = ({ content }: Damaged): Uint8Array =>
  typeof content === 'string' ? new TextEncoder().encode(content) : content;

function refused(one: Damaged): InputError {
  try {
    openBytes(bytesOf(one), one.file, { id: 'x', ...(one.table ? { table: one.table } : {}) });
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error(`${one.what} was not refused.`);
}

describe('what is wrong with a file', () => {
  const corpus = damaged();
  it.each(corpus.map((one) => [one.what, one] as const))('%s is told, in words of the tables', (_, one) => {
    const error = refused(one);
    expect(error.code).toBe(one.code);
    expect(error.problems.filter(({ message }) => !isPhrase(message))).toEqual([]);
    expectAllSaid([error.phrase], 0);
    expect(tellError(error, TELL_IN)).toContain(one.file);
  });

  it('is more than a hundred files, and every row of the tables of documents and sheets is said of one', () => {
    expect(corpus.length).toBeGreaterThan(100);
    const said = new Set(corpus.map(({ code }) => code));
    // These need tens of megabytes.
    const vast = ['too-large'];
    for (const [name, table] of Object.entries(TABLES))
      expect(
        Object.keys(table).filter((code) => !said.has(code) && !vast.includes(code)),
        name,
      ).toEqual([]);
  });

  it('says as names only what stands in the file, or what may stand there', () => {
    const strange = corpus.flatMap((one) => {
      const text = `${one.file} ${new TextDecoder().decode(bytesOf(one))}`.toLowerCase();
      return namesIn(refused(one).phrase)
        .filter((name) => /\p{L}\s+\p{L}/u.test(name) && !text.includes(name.toLowerCase()))
        .map((name) => `${one.what}: ${name}`);
    });
    expect(strange).toEqual([]);
  });
});

/** Values of every name that a row says. */
const VALUES: FindingValues = {
  found: 'text',
  what: 'pieces',
  known: ['a', 'b'],
  expected: ['a', 'b'],
  near: 'n',
  given: 'g',
};
const sampled = (values: FindingValues): FindingValues =>
  new Proxy(values, { get: (all, key) => all[key as string] ?? 12.5 });
/** Rows in which a name means something else. */
const OF: Readonly<Record<string, FindingValues>> = {
  'DOCUMENT_WORDS out-of-range': { given: 4 },
  'SHEET_WORDS empty': { what: 'row' },
};

describe('each row of what is thrown', () => {
  const rows = Object.entries(TABLES).flatMap(([name, table]) =>
    Object.keys(table).map((code) => [`${name} ${code}`, table, code] as const),
  );
  it.each(rows)('%s is a phrase, in one unit', (name, table, code) => {
    const phrase = phraseOf(table, code, sampled({ ...VALUES, ...OF[name] }));
    expectAllSaid([phrase], 0);
    expect(renderPhrase(phrase, TELL_IN)).not.toMatch(/\d (mm|cm|m)\b/);
    expect(renderPhrase(phrase, TELL_CM)).not.toMatch(/\d (in|yd)\b/);
  });
});
