import { describe, expect, it } from 'vitest';
import { loadBody, loadChart, loadEither } from '../src/cli/load.ts';
import type { Io } from '../src/cli/io.ts';
import {
  cautionLine,
  cautionsFor,
  InputError,
  readFitting,
  renderPhrase,
  TELL_CM,
  tellIn,
  writeBody,
  writeFitting,
  writePattern,
  writePerson,
  type Body,
  type Fitting,
  type LaySettings,
} from '../src/garment/index.ts';
import { runCli } from '../src/cli/index.ts';
import { askFor, cuttingPieces, lay, purchase, type Placement } from '../src/layout/index.ts';
import { printPages, readPaper, sheet, svg } from '../src/paper/index.ts';
import { createPipeline, newFitting } from '../src/pipeline/index.ts';
import { sample } from '../src/samples/index.ts';
import { decodeText } from '../src/desk/decode-text.ts';
import {
  fittingSheet,
  layJob,
  laySaid,
  laySettings,
  openBytes,
  paperOf,
  putLaySettings,
  tablePattern,
  type Opened,
  type Wishes,
} from '../src/desk/index.ts';

const utf8 = (text: string, mark = false): Uint8Array =>
  new TextEncoder().encode(`${mark ? '\ufeff' : ''}${text}`);
const utf16 = (text: string, little: boolean): Uint8Array => {
  const view = new DataView(new ArrayBuffer(2 * text.length + 2));
  [0xfeff, ...Array.from(text, (c) => c.charCodeAt(0))].forEach((c, i) => view.setUint16(2 * i, c, little));
  return new Uint8Array(view.buffer);
};
/** Windows-1252 of letters that it has at their Unicode places: ½ ¼ ¾ é among them. */
const western = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0));

const ENCODINGS: readonly (readonly [string, (text: string) => Uint8Array])[] = [
  ['UTF-8', (text) => utf8(text)],
  ['UTF-8 with its mark', (text) => utf8(text, true)],
  ['UTF-16, low byte first', (text) => utf16(text, true)],
  ['UTF-16, high byte first', (text) => utf16(text, false)],
  ['the Western code page', western],
];

/** The world as the command line sees it: one file. */
const io = (bytes: Uint8Array): Io =>
  ({ readFile: () => Promise.resolve(bytes), exists: () => Promise.resolve(true) }) as unknown as Io;
const mm = (body: Body, id: 'bust-girth' | 'waist-girth' | 'hip-girth'): number | undefined =>
  body.readings[id]?.[0]?.value;

// 1 in is 25.4 mm exactly (international inch, 1959).
const TABLES: readonly (readonly [string, string, 'in' | 'cm', number, number])[] = [
  [
    'fractions in one letter',
    'measure,value,unit\nbust,40½,in\nwaist,31¼,in\n',
    'in',
    40.5 * 25.4,
    31.25 * 25.4,
  ],
  [
    'fractions and inch marks',
    'measure,value,unit\nbust,40 1/2",\nwaist,"31 3/4""",\n',
    'in',
    40.5 * 25.4,
    31.75 * 25.4,
  ],
  ['semicolons and decimal commas', 'measure;value;unit\nbust;102,9;cm\nwaist;79,5;cm\n', 'cm', 1029, 795],
  [
    'tabs and decimal commas',
    'measure\tvalue\tunit\r\nbust\t102,9\tcm\r\nwaist\t79,5\tcm\r\n',
    'cm',
    1029,
    795,
  ],
  [
    'quoted decimal commas',
    'measure,value,unit\n"bust","102,9","cm"\n"waist","79,5","cm"\n',
    'cm',
    1029,
    795,
  ],
];

describe.each(ENCODINGS)('bytes in %s', (_, encode) => {
  it.each(TABLES)('hold the same measures for every face: %s', async (_name, text, show, bust, waist) => {
    const bytes = encode(text);
    const page = openBytes(bytes, 'Zoé.csv', { id: 'Zoé', wearer: 'man', waist: 'natural' });
    if (page.kind !== 'measures') throw new Error(page.kind);
    expect(mm(page.body, 'bust-girth')).toBeWithinMm(bust, 1e-6);
    expect(mm(page.body, 'waist-girth')).toBeWithinMm(waist, 1e-6);
    expect(page.body).toMatchObject({ name: 'Zoé', wearer: 'man', waist: 'natural', show });
    const line = await loadBody(io(bytes), 'folder/Zoé.csv', { wearer: 'man', waist: 'natural' });
    expect(line.body).toEqual(page.body);
    expect(line.questions).toEqual(page.questions);
  });

  it('holds the same size table for every face, in its full and its plain form', async () => {
    const full = 'measure;kind;unit;8;10\nbust;body;cm;84,5;88\nbust;finished;cm;94,5;98\n';
    const plain = 'Size;8;10\nBust;84,5;88\nFinished bust (cm);94,5;98\n';
    for (const [text, unit] of [
      [full, undefined],
      [plain, 'cm'],
    ] as const) {
      const bytes = encode(text);
      const page = openBytes(bytes, 'table.csv', { id: 't', unit });
      if (page.kind !== 'chart') throw new Error(page.kind);
      expect(page.chart.body['bust-girth']).toEqual([845, 880]);
      expect(page.chart.finished['bust']).toEqual([945, 980]);
      expect(await loadChart(io(bytes), 'table.csv', { unit })).toEqual(page.chart);
      expect(tablePattern('t', page.name, page.chart)).toMatchObject({ name: 'table', garment: 'dress' });
    }
  });
});

const kindOf = (bytes: Uint8Array, name: string, wishes: Partial<Wishes> = {}): Opened['kind'] =>
  openBytes(bytes, name, { id: 'x', ...wishes }).kind;

describe('what a file is', () => {
  const body: Body = { id: 'a', name: 'A', wearer: 'child', show: 'cm', waist: 'iso', readings: {} };
  const pattern = sample('a-line-skirt');

  it('is read from its bytes, whatever its name', () => {
    expect(kindOf(utf8(writePattern(pattern)), 'skirt.txt')).toBe('pattern');
    expect(kindOf(utf8(writeBody(body)), 'a')).toBe('person');
    expect(kindOf(utf8(writePerson({ body, fittings: [] })), 'a.json')).toBe('person');
    expect(kindOf(utf16(writePerson({ body, fittings: [] }), true), 'a.json')).toBe('person');
    expect(kindOf(utf8('measure,value,unit\nbust,90,cm'), 'a.json')).toBe('measures');
    expect(kindOf(utf8('%PDF-1.7\n'), 'pattern')).toBe('drawing');
    expect(kindOf(utf8('<?xml version="1.0"?><svg width="1"/>'), 'pattern.txt')).toBe('drawing');
    expect(kindOf(utf8('damaged'), 'pattern.dxf')).toBe('drawing');
  });

  it('is told with row, column and file where it is broken', () => {
    const broken = (bytes: Uint8Array): InputError['where'] => {
      try {
        openBytes(bytes, 'mine.csv', { id: 'x' });
      } catch (error) {
        if (error instanceof InputError) return error.where;
      }
      throw new Error('it was opened');
    };
    expect(broken(western('measure,value,unit\nbust,90,cm\nwaist,eighty,cm'))).toMatchObject({
      file: 'mine.csv',
      row: 3,
      column: 2,
    });
    expect(broken(utf8('{ "format": "pintrue-person", '))).toMatchObject({ file: 'mine.csv', row: 1 });
    expect(broken(utf8('{ "format": "other" }'))).toMatchObject({ file: 'mine.csv' });
  });

  it('says whose measures a table is taken for, unless the person said', () => {
    const findings = (wearer?: Body['wearer']): readonly string[] => {
      const opened = openBytes(utf8('measure,value,unit\nbust,90,cm'), 'a.csv', { id: 'x', wearer });
      return opened.kind === 'measures' ? opened.findings.map((f) => f.code) : [opened.kind];
    };
    expect(findings()).toEqual(['wearer-assumed']);
    expect(findings('woman')).toEqual([]);
  });

  it('is named where another thing is wanted', async () => {
    await expect(loadEither(io(utf8(writeBody(body))), 'a.json')).rejects.toThrow(
      'a.json: A fitting or a pattern is wanted here; this is a person.',
    );
  });
});

it('decodes ½ in one byte, and never takes good UTF-8 for the Western code page', () => {
  expect(decodeText(Uint8Array.of(0x34, 0x30, 0xbd))).toBe('40½');
  expect(decodeText(utf8('40½ é'))).toBe('40½ é');
});

describe('what a fitting keeps of cloth and paper', () => {
  const body: Body = {
    id: 'anna',
    name: 'Anna',
    wearer: 'woman',
    show: 'cm',
    waist: 'natural',
    readings: { 'waist-girth': [{ value: 720 }], 'hip-girth': [{ value: 960 }] },
  };
  const plain = newFitting({ body, pattern: sample('a-line-skirt'), on: '2026-03-01' });
  const { make } = createPipeline();
  const { garment, plan } = make(plain);
  const piece = cuttingPieces(garment, 'shell')[0]!.piece;

  /** What a command writes and answers, of one fitting in the world. */
  const run = async (fitting: Fitting, ...argv: string[]) => {
    const files = new Map<string, string | Uint8Array>([['f.json', writeFitting(fitting)]]);
    let out = '';
    const world: Io = {
      readFile: (path) => Promise.resolve(utf8(String(files.get(path)))),
      writeFile: (path, content) => Promise.resolve(void files.set(path, content)),
      mustBeWritable: () => Promise.resolve(),
      exists: (path) => Promise.resolve(files.has(path)),
      out: (text) => (out += text),
      err: () => undefined,
      today: () => '2026-03-01',
      now: () => 0,
    };
    await runCli(argv, world);
    return { out, file: (path: string): string => String(files.get(path)) };
  };
  interface Laid {
    readonly length: number;
    readonly width: number;
    readonly placements: readonly { readonly piece: string; readonly x: number; readonly y: number }[];
    readonly findings: readonly { readonly code: string }[];
  }
  const laid = async (fitting: Fitting, ...more: string[]): Promise<Laid> => {
    const { out } = await run(fitting, 'lay', 'f.json', '--sweeps', '1', '--out', 'l.svg', '--json', ...more);
    return JSON.parse(out) as Laid;
  };
  /** The page's way: the settings of the fitting, the job of the desk, the first search. */
  const onPage = (fitting: Fitting): { length: number; placements: readonly object[] } => {
    const { job } = layJob(garment, 'shell', laySettings(fitting, 'shell'));
    return [...lay(job, { seed: 1, budget: { sweeps: 1 } })].at(-1)!;
  };

  const KEPT: readonly (readonly [string, Partial<LaySettings>])[] = [
    ['nothing', {}],
    ['a width, a nap and no fold', { width: 1143, nap: 'one-way', fold: 'none', gap: 6, selvage: 20 }],
    ['stripes', { repeatAlong: 60, fold: 'none' }],
    ['cloth that shrinks', { shrinkWidth: 0.04, shrinkLength: 0.05 }],
    ['a spoilt place', { fold: 'none', spoilt: [{ fromEnd: 0, fromEdge: 0, long: 400, high: 900 }] }],
    [
      'a remnant',
      {
        fold: 'none',
        remnant: [
          { x: 0, y: 0 },
          { x: 2400, y: 0 },
          { x: 2400, y: 1300 },
          { x: 0, y: 1300 },
        ],
      },
    ],
  ];
  it.each(KEPT)('is laid alike on the page and from the command line: %s', async (_name, kept) => {
    const fitting = Object.keys(kept).length === 0 ? plain : putLaySettings('shell', kept)(plain);
    const [line, page] = [await laid(fitting), onPage(fitting)];
    expect(line.length).toBe(page.length);
    expect(line.placements).toEqual(page.placements);
    expect(line.width).toBeWithinMm((kept.width ?? 1400) * (1 - (kept.shrinkWidth ?? 0)), 1e-6);
  });

  it.each([
    ['in', 'letter', 54 * 25.4, 'yard', /yards +metres/],
    ['cm', 'a4', 1400, 'metre', /metres +yards/],
  ] as const)('begins in the person’s own unit on every face: %s', async (show, paper, width, per, head) => {
    const fitting: Fitting = { ...plain, body: { ...body, show } };
    expect(paperOf(fitting)).toBe(paper);
    expect(laySettings(fitting, 'shell')).toMatchObject({ width, pricePer: per });
    const print = async (f: Fitting, ...more: string[]): Promise<unknown> => {
      const { out } = await run(f, 'print', 'f.json', '--pieces', piece, '--out', 'p.pdf', '--json', ...more);
      return (JSON.parse(out) as { paper: string }).paper;
    };
    expect(await print(fitting)).toBe(paper);
    // What somebody chose is kept, whatever the unit.
    const chosen = readFitting(writeFitting({ ...fitting, paper: { ...fitting.paper, paper: 'a3' } }));
    expect([paperOf(chosen), await print(chosen)]).toEqual(['a3', 'a3']);
    expect(await print(chosen, '--paper', 'a0')).toBe('a0');
    const { out } = await run(fitting, 'cloth', 'f.json', '--width', '1400mm', '--sweeps', '1');
    expect(out).toMatch(head);
  });

  it('says first what the shop sells by, and what is left over of that', () => {
    const needed = 1301;
    const [inch, metric] = (['yard', 'metre'] as const).map((per) =>
      purchase('shell', 1400, needed, { per }),
    );
    expect(askFor(inch!, 'yard')).toEqual(['1 1/2 yd', '1.35 m']);
    expect(askFor(metric!, 'metre')).toEqual(['1.35 m', '1 1/2 yd']);
    expect(inch!.remnant).toBeWithinMm(1.5 * 914.4 - needed, 1e-6);
    expect(metric!.remnant).toBeWithinMm(1350 - needed, 1e-6);
  });

  it('gives way to what is typed, and leaves out pins of another lay, telling so', async () => {
    const open = putLaySettings('shell', { fold: 'none' })(plain);
    const [found] = (onPage(open).placements as readonly Placement[]).filter((p) => p.piece === piece);
    // The same place, three metres further along the cloth: nothing else would lay it there.
    const { as: _as, ...at } = { ...found!, x: found!.x + 3000 };
    const kept = putLaySettings('shell', { pins: [at] })(open);
    const pinned = await laid(kept);
    expect(pinned.placements).toContainEqual(expect.objectContaining(at));
    const typed = await laid(kept, '--width', '1600mm');
    expect(typed.width).toBe(1600);
    expect(typed.findings.map((f) => f.code)).toContain('pins-left-out');
    expect(laySaid(laySettings(kept, 'shell'), {}).settings.pins).toHaveLength(1);
  });

  it('is read to the last field, and an older fitting keeps what holds', () => {
    const fitting = putLaySettings('shell', { width: 1143 })(plain);
    expect(readFitting(writeFitting(fitting)).lay).toEqual(fitting.lay);
    const wrong = JSON.parse(writeFitting(fitting)) as { lay: { shell: { nap: string } } };
    wrong.lay.shell.nap = 'sideways';
    expect(() => readFitting(wrong)).toThrow('lay.shell.nap');
    const older = {
      ...(JSON.parse(writeFitting(plain)) as object),
      version: 1,
      lay: { shell: { width: 1143, nap: 'sideways', gap: 1e9, colour: 'red' }, felt: {} },
    };
    expect(readFitting(older).lay).toEqual({ shell: { width: 1143 } });
  });

  it('says one set of cautions wherever a bought pattern goes: page, terminal, first printed page', async () => {
    // Nobody named a caution: a drawing, a photograph and a table have none of their own.
    const pattern = { ...sample('a-line-skirt'), wearer: 'child' as const };
    const fitting: Fitting = { ...plain, pattern };
    const { out } = await run(fitting, 'check', 'f.json');
    const lines = cautionsFor(fitting).map((c) => renderPhrase(cautionLine(c), tellIn(fitting.body.show)));
    expect(lines).toHaveLength(3);
    for (const line of lines) expect(out).toContain(line);
    for (const paper of ['a4', 'letter', 'a0'] as const) {
      const [first] = printPages(garment, fittingSheet(fitting, plan), readPaper(paper)).pages;
      const printed = [...first!.furniture.words, ...first!.drawn.words].map((w) => w.text).join(' ');
      for (const line of lines) expect(printed, paper).toContain(line);
    }
  });

  it('goes on paper alike from page and command line: pieces, allowances, other sizes, cautions', async () => {
    const pattern = { ...sample('a-line-skirt'), cautions: ['tight', 'hot-iron'] };
    const fitting: Fitting = {
      ...plain,
      pattern,
      paper: { paper: '900x1500', allowances: false, nest: 'off', pieces: [piece] },
    };
    const { file } = await run(fitting, 'print', 'f.json', '--out', 'p.svg');
    const choices = fittingSheet(fitting, plan);
    expect(choices.notes!.map((n) => renderPhrase(n, TELL_CM)).join(' ')).toMatch(/breathe.*hot iron/);
    expect(file('p.svg')).toBe(
      svg(sheet(make(fitting).garment, choices, readPaper('900x1500').width), choices),
    );
  });
});
