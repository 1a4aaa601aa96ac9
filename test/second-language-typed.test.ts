import { afterEach, beforeAll, describe, expect, it, vi, type MockInstance } from 'vitest';
import { ALTER_WORDS, CATALOGUE, OBSERVABLES } from '../src/alter/index.ts';
import { EXIT, runCli, type Io } from '../src/cli/index.ts';
import { FILE_WORDS, fileProblem, USAGE_WORDS } from '../src/cli/usage-word-table.ts';
import { VERBS } from '../src/cli/verbs.ts';
import {
  DOCUMENT_WORDS,
  EDGE_ROLES,
  CLOTHS,
  FOLDS,
  InputError,
  LEVELS,
  MEASURE_IDS,
  NAPS,
  PIECE_HALVES,
  PIECE_ROLES,
  SHEET_WORDS,
  type Tell,
} from '../src/garment/index.ts';
import { ROOM_WORDS } from '../src/pipeline/index.ts';
import { PAPER_WORDS } from '../src/paper/index.ts';
import { writeSvg } from '../src/exchange/index.ts';
import { sample, SAMPLES } from '../src/samples/index.ts';
import { files, MISTYPED } from './mistyped.ts';
import { accented, bareIn, expectAllSaid, namesIn } from './second-language.test-case.ts';

const TABLES: Readonly<Record<string, object>> = {
  USAGE_WORDS,
  FILE_WORDS,
  DOCUMENT_WORDS,
  SHEET_WORDS,
  PAPER_WORDS,
  ALTER_WORDS,
};
let stored: Readonly<Record<string, string | Uint8Array>>;
beforeAll(() => {
  stored = files();
});

/** Runs one command line in a world of a few files. @returns what was said, and the rows that said it */
async function obeyed(line: string, letters: Tell['letters'] = (words) => words, writes = false) {
  const spies = Object.values(TABLES).flatMap((table) =>
    Object.keys(table).map((code) => [code, vi.spyOn(table as never, code as never)] as const),
  ) as readonly (readonly [string, MockInstance])[];
  let [out, err] = ['', ''];
  const io: Io = {
    readFile: async (path) => {
      const found = stored[path];
      if (found === undefined)
        throw new InputError(fileProblem('file', { file: path }, { doing: 'read', code: 'ENOENT' }));
      return typeof found === 'string' ? new TextEncoder().encode(found) : found;
    },
    writeFile: async (path) => {
      if (!writes) throw new Error(`${path} was written`);
    },
    mustBeWritable: async () => undefined,
    exists: async (path) => path in stored,
    out: (text) => (out += text),
    err: (text) => (err += text),
    letters,
    today: () => '2026-03-01',
    now: () => 0,
  };
  const code = await runCli(line.split(' '), io);
  return { code, out, err, rows: spies.filter(([, spy]) => spy.mock.calls.length > 0).map(([row]) => row) };
}
afterEach(() => vi.restoreAllMocks());

/** What may be typed, which no language changes. */
const TYPED = [
  ...VERBS.flatMap(({ name, usage, options }) => [name, ...usage, ...Object.keys(options)]),
  ...CATALOGUE.flatMap(({ id, params }) => [id, ...params.map((p) => p.id)]),
  ...[...SAMPLES, ...OBSERVABLES].map(({ id }) => id),
  ...LEVELS.map(({ level }) => level),
  // A finding is answered by its code.
  ...ROOM_WORDS.flatMap((table) => Object.keys(table)),
  ...[CLOTHS, FOLDS, NAPS, PIECE_ROLES, EDGE_ROLES, PIECE_HALVES, MEASURE_IDS].flat(),
  'pintrue help VERB units name=value mm cm in m yd a4 letter roll-WIDTH WIDTHxHEIGHT both whole part',
  'LINE WHERE DIRECTION AMOUNT SECOND front back all left right',
  'low high forward back tight loose gapes folds drags VALUE body finished params a b dxf svg pdf json measure value unit kind side',
];
const wordsOf = (texts: readonly string[]): string[] =>
  texts.flatMap((text) => text.toLowerCase().match(/\p{L}+/gu) ?? []);

describe('what is wrong with what was typed', () => {
  it.each(MISTYPED)('%s: %s', async (code, line) => {
    const { code: exit, out, err, rows } = await obeyed(line);
    expect(err).not.toContain('A fault in Pintrue');
    expect(exit).toBe(EXIT.input);
    expect(out).toBe('');
    if (Object.values(TABLES).some((table) => Object.hasOwn(table, code))) expect(rows).toContain(code);
    for (const unit of ['in', 'cm'] as const) {
      const said = await obeyed(
        `${line}${line.includes('--units') ? '' : ` --units ${unit}`}`,
        accented(unit).letters,
      );
      const known = new Set(wordsOf([line, ...TYPED, ...Object.keys(stored), ...idsIn(line)]));
      expect(
        bareIn(said.err, unit).filter((word) => !known.has(word.toLowerCase())),
        said.err,
      ).toEqual([]);
    }
  });

  it('is said in the unit of whoever it is about, once a file has told who that is', async () => {
    for (const line of [
      'alter f.json length-above-waist back=9000mm',
      'print f.json --paper 5x5 --out x.pdf',
    ]) {
      const { err } = await obeyed(line);
      const inches = /\d in\b/.test(err);
      expect(inches || /\d cm\b/.test(err), err).toBe(true);
      expect(err).not.toMatch(inches ? /\d (mm|cm)\b/ : /\d in\b/);
      expect((await obeyed(`${line} --units both`)).err).toMatch(/\d mm \(.*in\)/);
    }
  });

  it('says every row of the tables of what is typed', async () => {
    const said = new Set<string>(MISTYPED.map(([code]) => code));
    // `answers-missing`, `chart-sizes`, `role-not-known` and `accept-again` ask for a file that is read: test/cli.test.ts and test/cli-trial.test.ts say them. No alteration takes degrees yet.
    const elsewhere = [
      'answers-missing',
      'chart-sizes',
      'role-not-known',
      'accept-again',
      'too-large',
      'amount-degrees',
    ];
    for (const table of [USAGE_WORDS, FILE_WORDS])
      expect(Object.keys(table).filter((code) => !said.has(code) && !elsewhere.includes(code))).toEqual([]);
  });
});

describe('what a command tells', () => {
  const DRAWING = 'drawn.svg';
  const LINES = [
    'samples',
    'samples knit-tee --out x.json',
    `read ${DRAWING}`,
    'roles',
    'roles p.json',
    'plan --body ada.csv --chart chart.csv',
    'plan f.json',
    'plan t.json',
    'make --body ada.csv --pattern p.json --out x.json',
    'alter',
    'alter f.json',
    'alter f.json length-above-waist back=1in --out x.json',
    'alter f.json --remove longer',
    'trial f.json --saw waist,back,low,1in',
    'trial f.json --saw waist,back,low,1in --accept 1 --out x.json',
    'true f.json',
    'seams p.json',
    'check f.json',
    'check p.json',
    'print p.json --out x.svg',
    'cloth f.json --width 1400mm --sweeps 1',
    'cloth f.json --width 1400mm --sweeps 1 --price 9/yd',
    'lay f.json --width 1400mm --sweeps 1 --out l.svg',
    'lay f.json --width 100mm --sweeps 1 --out l.svg',
    'write p.json --out x.svg',
  ];

  it.each(LINES)('of pintrue %s no word escapes the tables', async (line) => {
    stored = { ...stored, [DRAWING]: writeSvg(sample('a-line-skirt')) };
    for (const unit of ['in', 'cm'] as const) {
      const { letters } = accented(unit);
      const said = await obeyed(`${line} --units ${unit}`, letters, true);
      expect(said.err).not.toContain('pintrue/');
      expect(said.out.length).toBeGreaterThan(30);
      // What stands bare in the answer for programs: names, ids, books. Its sentences are made of the same phrases.
      const { out: json } = await obeyed(`${line} --units ${unit} --json`, letters, true);
      const values = JSON.stringify(JSON.parse(json), (key, value: unknown) =>
        key === 'message' || key === 'sentence' ? undefined : value,
      );
      const known = new Set(wordsOf([line, ...TYPED, ...idsIn(line), values.replace(/\p{L}\u0301/gu, '')]));
      const bare = bareIn(`${said.out}\n${said.err.replace(/^(\S+) \[[a-z-]+\]/gm, '$1')}`, unit);
      expect([...new Set(bare.filter((word) => !known.has(word.toLowerCase())))], said.out).toEqual([]);
    }
  });
});

describe('what help says', () => {
  it.each(['', ...VERBS.map(({ name }) => name)])('of pintrue help %s is said whole', async (name) => {
    const verbs = VERBS.filter((verb) => name === '' || verb.name === name);
    const phrases = verbs.flatMap(({ about, explain }) => [about, ...Object.values(explain)]);
    expectAllSaid(phrases, 0);
    const names = phrases.flatMap(namesIn);
    // What is typed is short: no sentence hides behind a name.
    expect(names.filter((one) => one.split(' ').length > 7)).toEqual([]);
    const { out, code } = await obeyed(`help ${name}`.trim(), accented('cm').letters);
    expect(code).toBe(EXIT.fine);
    const known = new Set(wordsOf([...TYPED, ...names]));
    expect(bareIn(out, 'cm').filter((word) => !known.has(word.toLowerCase()))).toEqual([]);
  });
});

/** What a line's files say themselves: ids and names of documents, the cells of tables. */
function idsIn(line: string): string[] {
  return line.split(' ').flatMap((word) => {
    const text = stored[word];
    if (typeof text !== 'string') return [];
    if (word.endsWith('.csv')) return [text];
    return [...text.matchAll(/"(?:id|name|source)":\s*"([^"]*)"/g)].map((m) => m[1]!);
  });
}
