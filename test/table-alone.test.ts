import { describe, expect, it } from 'vitest';
import { runCli, type Io } from '../src/cli/index.ts';
import { fittingSheet, openBytes, tablePattern } from '../src/desk/index.ts';
import { markingWords } from '../src/fit/index.ts';
import {
  InputError,
  readFitting,
  readPattern,
  renderPhrase,
  t,
  TELL_BOTH,
  TELL_IN,
  writeFitting,
  writePattern,
  type Body,
  type LevelPlan,
  type SizeChart,
} from '../src/garment/index.ts';
import { bundles, cuttingPieces, notions } from '../src/layout/index.ts';
import { createPipeline, findingSentence, newFitting } from '../src/pipeline/index.ts';

/** A table as it stands on an envelope (our own figures), and nothing else. */
const TABLE = `Size, 8, 10, 12, 14, 16
Bust, 31 1/2, 32 1/2, 34, 36, 38
Waist, 24, 25, 26 1/2, 28, 30
Hip, 33 1/2, 34 1/2, 36, 38, 40
Finished bust, 35, 36, 37 1/2, 39 1/2, 41 1/2
Finished waist, 25, 26, 27 1/2, 29, 31
Finished hip, 36, 37, 38 1/2, 40 1/2, 42 1/2
`;
const BODY = 'measure,value,unit\nbust,36,in\nwaist,29 1/4,in\nhip,38 3/4,in\nhip-depth,9,in\n';
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

function chartOf(text: string): SizeChart {
  const opened = openBytes(bytes(text), 'table.csv', {
    id: 't',
    unit: 'in',
    waist: 'natural',
    table: 'sizes',
  });
  if (opened.kind !== 'chart') throw new Error('a size table');
  return opened.chart;
}
function bodyOf(text: string): Body {
  const opened = openBytes(bytes(text), 'body.csv', {
    id: 'b',
    wearer: 'woman',
    waist: 'natural',
    table: 'measures',
  });
  if (opened.kind !== 'measures') throw new Error('measures');
  return opened.body;
}
const pattern = tablePattern('table', 'A table', chartOf(TABLE));
const fitting = newFitting({ body: bodyOf(BODY), pattern, on: '2026-03-01' });
const short = (l: LevelPlan) => [
  l.level,
  l.size,
  Math.round((l.residual / 25.4) * 100) / 100,
  l.seams,
  l.edges,
];

describe('a size table without pieces', () => {
  const made = createPipeline().make(fitting);

  it('gives a plan at every level it names', () => {
    expect(made.plan.base.size).toBe('14');
    expect(made.plan.levels.map(short)).toEqual([
      ['bust', '14', 0, 2, 4],
      ['waist', '16', -0.75, 2, 4],
      ['hip', '14', 0.75, 2, 4],
    ]);
  });

  it('names levels by its body rows alone too, by its finished rows alone too', () => {
    const rows = TABLE.trimEnd().split('\n');
    const of = (text: string) =>
      createPipeline().planFor(
        fitting.body,
        tablePattern('t', 'T', chartOf(text)),
        fitting.fabric,
        fitting.choices,
      );
    for (const text of [rows.slice(0, 4), [rows[0]!, ...rows.slice(4)]].map((r) => `${r.join('\n')}\n`))
      expect(of(text).levels.map((l) => l.level)).toEqual(['bust', 'waist', 'hip']);
  });

  it('is the same plan as from the chart on the command line', async () => {
    const { run } = world({ 'body.csv': BODY, 'table.csv': TABLE });
    const chart = [
      '--body',
      'body.csv',
      '--table-unit',
      'in',
      '--waist',
      'natural',
      '--wearer',
      'woman',
      '--json',
    ];
    const byChart = await run('plan', '--chart', 'table.csv', ...chart);
    const byPattern = await run('plan', '--pattern', 'table.csv', ...chart);
    type Json = { base: unknown; levels: readonly unknown[]; marking: readonly unknown[] };
    const [a, b] = [byChart, byPattern].map((r) => JSON.parse(r.out) as Json);
    expect(a!.levels).toHaveLength(3);
    expect(b!.base).toEqual(a!.base);
    expect(b!.levels).toEqual(a!.levels);
    expect(b!.marking).toEqual(a!.marking);
  });

  it('is marked by hand, listed and found nothing wrong with', () => {
    const marks = markingWords(
      made.plan,
      pattern.chart.sizes.map((s) => s.id),
    ).map((line) => renderPhrase(line, TELL_IN));
    expect(marks).toContain(
      'Waist: mark 3/16 in inside the line of size 16 at both edges of each of the 2 seams that share the change. Leave folds, centre lines and zip seams on the line of size 16.',
    );
    expect(made.findings.filter((f) => f.severity === 'error')).toEqual([]);
    for (const finding of made.findings) expect(findingSentence(finding, TELL_BOTH)).toMatch(/\w/);
    expect(made.seams).toEqual([]);
    expect(made.girths).toEqual([]);
    expect(made.garment.pieces).toEqual([]);
    expect(notions(made.garment, {})).toEqual([]);
    expect(bundles(made.garment.pieces)).toEqual([]);
    expect(cuttingPieces(made.garment)).toEqual([]);
    expect(fittingSheet(fitting, made.plan).title).toContain('A table');
    expect(readFitting(writeFitting(fitting))).toEqual(fitting);
    expect(readPattern(writePattern(pattern))).toEqual(pattern);
  });
});

function world(files: Record<string, string>) {
  const stored = new Map<string, string | Uint8Array>(Object.entries(files));
  const run = async (...argv: string[]) => {
    let [out, err] = ['', ''];
    const io: Io = {
      readFile: async (path) => {
        const found = stored.get(path);
        if (found === undefined)
          throw new InputError({ code: 'file', where: { file: path }, message: t`there is no such file.` });
        return typeof found === 'string' ? bytes(found) : found;
      },
      writeFile: async (path, content) => void stored.set(path, content),
      mustBeWritable: async () => undefined,
      exists: async (path) => stored.has(path),
      out: (text) => (out += text),
      err: (text) => (err += text),
      today: () => '2026-03-01',
      now: () => performance.now(),
    };
    const code = await runCli(argv, io);
    return { code, out, err };
  };
  return { run, stored };
}

describe('a fitting of a table alone, on the command line', () => {
  const files = {
    'f.json': writeFitting(fitting),
    'p.json': writePattern(pattern),
    'body.csv': BODY,
    'table.csv': TABLE,
  };
  const NO_PIECES = /is a size table without pieces/;

  it('is made of a table’s document, or of the table itself', async () => {
    for (const file of ['p.json', 'table.csv']) {
      const { run, stored } = world(files);
      const { code, out } = await run(
        ...`make --body body.csv --pattern ${file} --wearer woman --waist natural --table-unit in --out made.json`.split(
          ' ',
        ),
      );
      expect(code).toBe(0);
      expect(out).toContain('base size 14');
      // What is to be done stands there, for there are no pieces to show it.
      expect(out).toContain('Waist: mark');
      expect(stored.has('made.json')).toBe(true);
    }
  });

  it('is planned, with words for marking and why', async () => {
    const { code, out } = await world(files).run('plan', 'f.json');
    expect(code).toBe(0);
    expect(out).toContain('To mark it on the tissue');
    expect(out).toContain('Waist: mark');
  });

  it.each([
    ['alter', 'f.json', 'width-seams', 'level=waist', 'total=1in'],
    ['true', 'f.json'],
    ['trial', 'f.json', '--saw', 'waist line, all, tight, 1in'],
    ['print', 'f.json', '--out', 'f.pdf'],
    ['print', 'p.json', '--out', 'p.svg'],
    ['lay', 'f.json', '--out', 'lay.svg'],
    ['cloth', 'f.json'],
    ['seams', 'f.json'],
    ['seams', 'p.json'],
    ['check', 'f.json'],
    ['check', 'p.json'],
    ['write', 'p.json', '--format', 'dxf', '--out', 'p.dxf'],
    ['write', 'f.json', '--format', 'svg', '--out', 'f.svg'],
  ])('is refused by %s %s in a sentence that says what it is and what it gives', async (...argv) => {
    const { run, stored } = world(files);
    const { code, out, err } = await run(...argv);
    expect(code).not.toBe(0);
    expect(out).toBe('');
    expect(err).toMatch(NO_PIECES);
    expect(err).toContain('pintrue plan');
    expect([...stored.keys()]).toEqual(Object.keys(files));
  });

  it('shows what was done to it: nothing', async () => {
    const { code, out } = await world(files).run('alter', 'f.json');
    expect(code).toBe(0);
    expect(out).toContain('A table for body');
  });
});
