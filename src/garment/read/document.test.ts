import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import type { Path } from '../../geometry/index.ts';
import {
  DEFAULT_CHOICES,
  InputError,
  parseChartCsv,
  parseMeasuresCsv,
  readBody,
  readFitting,
  readLength,
  readPattern,
  renderPhrase,
  TELL_CM,
  writeBody,
  writeFitting,
  wornPair,
  writePattern,
  type Fitting,
  type Pattern,
} from '../index.ts';

/** A square of cloth in two sizes, sewn to itself: the smallest pattern there is. */
const line = (x1: number, y1: number, x2: number, y2: number): Path =>
  [0, 1 / 3, 2 / 3, 1].map((t) => ({ x: x1 + (x2 - x1) * t, y: y1 + (y2 - y1) * t }));
const corners: readonly (readonly [number, number])[] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];
const square: Pattern = {
  format: 'pintrue-pattern',
  version: 2,
  id: 'square',
  name: 'Square',
  about: 'A bag.',
  garment: 'skirt',
  wearer: 'woman',
  cloth: { kind: 'woven' },
  chart: {
    sizes: [
      { id: 'S', label: 'S' },
      { id: 'M', label: 'M' },
    ],
    waist: 'natural',
    body: { 'hip-girth': [900, 1000] },
    finished: { hip: [950, null] },
    finishedLengths: {},
  },
  pieces: [
    {
      id: 'front',
      name: 'Front',
      role: 'front',
      half: 'front',
      number: 1,
      cloth: 'shell',
      worn: wornPair(),
      edges: corners.map(([x, y], i) => {
        const [x2, y2] = corners[(i + 1) % 4]!;
        return {
          id: `e${i}`,
          name: `edge ${i}`,
          kind: i === 0 ? ('hem' as const) : ('seam' as const),
          ...(i === 0 ? { role: 'hem' as const } : {}),
          path: [240, 260].map((w) => line(x * w, y * 500, x2 * w, y2 * 500)),
          from: i < 2 ? 'hem' : 'waist',
          crossings: i === 1 ? [{ level: 'hip', at: [0.5, 0.5] }] : [],
          allowance: 15,
          notches: [{ id: 'n', at: [0.5, 0.5], count: 1 as const }],
        };
      }),
      darts: [],
      lines: [{ id: 'grain', kind: 'grain', path: [line(100, 50, 100, 450), line(110, 50, 110, 450)] }],
      marks: [{ id: 'dot', kind: 'dot', level: 'hip', at: [50, 55].map((x) => ({ x, y: 50 })) }],
    },
  ],
  seams: [
    {
      id: 'side',
      name: 'side',
      a: [{ piece: 'front', edge: 'e1' }],
      b: [{ piece: 'front', edge: 'e3', backwards: true }],
      join: { kind: 'plain' },
      order: 1,
      movable: true,
    },
  ],
  followers: [],
  bands: [],
  levels: [{ level: 'hip', pieces: ['front'] }],
  cautions: [],
};
const fitting: Fitting = {
  format: 'pintrue-fitting',
  version: 2,
  id: 'f1',
  title: 'Bag for Pim',
  on: '2026-03-01',
  body: {
    id: 'pim',
    name: 'Pim',
    wearer: 'woman',
    show: 'in',
    waist: 'natural',
    readings: { 'hip-girth': [{ value: 960, typed: '96 cm', on: '2026-02-01' }] },
  },
  pattern: square,
  fabric: { name: 'calico', kind: 'woven' },
  choices: { ...DEFAULT_CHOICES, ease: { hip: 50 } },
  steps: [
    { id: 's1', kind: 'alter', entry: 'length', params: { by: 10, at: 'hem', wedge: false } },
    { id: 's2', kind: 'true', keep: { side: 'a' } },
  ],
  observations: [{ id: 'o1', line: 'hem', where: 'back', direction: 'low', centre: 20, side: 5 }],
  paper: { paper: 'a4', allowances: true, nest: 'faint' },
  lay: { shell: { width: 1400, fold: 'lengthwise' }, lining: { nap: 'free' } },
  notes: '',
};

function fault(run: () => unknown): InputError {
  try {
    run();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('nothing was wrong');
}

/** The value with the entry at a path replaced (removed when undefined). */
function changed(value: unknown, path: readonly (string | number)[], to: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return to;
  const copy: Record<string | number, unknown> = Array.isArray(value)
    ? ([...value] as never)
    : { ...(value as object) };
  const next = changed((value as Record<string | number, unknown>)[key], rest, to);
  if (next === undefined && !Array.isArray(value)) delete copy[key];
  else copy[key] = next;
  return copy;
}

describe('documents', () => {
  it('are read back equal to what was written', () => {
    expect(readFitting(writeFitting(fitting))).toEqual(fitting);
    expect(readPattern(writePattern(square))).toEqual(square);
    expect(readBody(writeBody(fitting.body))).toEqual(fitting.body);
    const sided = {
      ...fitting.body,
      readings: { 'shoulder-slope': [{ value: 20, sure: true as const, side: 'left' as const }] },
    };
    expect(readBody(writeBody(sided))).toEqual(sided);
  });

  it('are the same bytes whatever order their fields came in', () => {
    const shuffle = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(shuffle);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([k, v]) => [k, shuffle(v)]),
      );
    };
    expect(writeFitting(shuffle(fitting) as Fitting)).toBe(writeFitting(fitting));
  });

  it('are never changed by reading', () => {
    const before = JSON.stringify(fitting);
    readFitting(fitting);
    expect(JSON.stringify(fitting)).toBe(before);
  });

  it.each<[(string | number)[], unknown, string]>([
    [['body', 'readings', 'hip-girth', 0, 'value'], 'wide', 'not-a-number'],
    [['body', 'readings', 'hip-grith'], [], 'not-one-of'],
    [['pattern', 'pieces', 0, 'edges', 1, 'path', 1], line(0, 0, 1, 1).slice(0, 3), 'list-length'],
    [['pattern', 'pieces', 0, 'edges', 1, 'path', 1, 3, 'x'], 99, 'outline-open'],
    [['pattern', 'pieces', 0, 'edges', 1, 'path'], [line(240, 0, 240, 500)], 'sizes-differ'],
    [
      ['pattern', 'pieces', 0, 'edges', 1, 'path', 1],
      [...line(260, 0, 260, 250), ...line(260, 250, 260, 500).slice(1)],
      'topology',
    ],
    [['pattern', 'pieces', 0, 'edges', 1, 'id'], 'e0', 'name-twice'],
    [
      ['pattern', 'pieces', 0, 'darts'],
      [{ id: 'd', name: 'd', legs: ['e0', 'e2'], foldToward: 'first', serves: 'hip' }],
      'dart-legs',
    ],
    [['pattern', 'seams', 0, 'a', 0, 'edge'], 'e9', 'unknown-edge'],
    [['pattern', 'bands'], [{ piece: 'front', seam: 'top' }], 'unknown-seam'],
    [['pattern', 'levels', 0, 'pieces', 0], 'back', 'unknown-piece'],
    [['pattern', 'chart', 'finished'], { hip: [1] }, 'sizes-differ'],
    [['steps', 0, 'kind'], 'conjure', 'not-one-of'],
    [['choices', 'between'], 'middling', 'not-one-of'],
    [['choices', 'size'], JSON.parse('{"__proto__":"S"}'), 'reserved-name'],
    [['title'], undefined, 'missing'],
    [['colour'], 'red', 'unknown-field'],
    [['version'], 7, 'newer-version'],
    [['format'], 'pintrue-pattern', 'other-format'],
    [['on'], 'soon', 'not-a-date'],
  ])('a mistake at %j is told with its path: %s', (path, to, code) => {
    const error = fault(() => readFitting(changed(fitting, path, to)));
    expect(error.code).toBe(code);
    const said = path
      .map((k) => (typeof k === 'number' ? `[${k}]` : `.${k}`))
      .join('')
      .slice(1);
    expect(
      said.startsWith(error.where.path!.slice(0, said.length)) || error.where.path!.startsWith(said),
    ).toBe(true);
  });

  it('that are broken as JSON are told with row and column', () => {
    const error = fault(() => readFitting('{\n "format": "pintrue-fitting",\n "version": oops }'));
    expect(error.code).toBe('not-json');
    expect(error.where).toMatchObject({ row: 3, column: 13 });
  });

  it('nested without end are refused before they are parsed', () => {
    expect(fault(() => readFitting('['.repeat(200_000))).code).toBe('too-deep');
  });
});

/** Draft 0: inches under `person.measures`, one number per measure; a knit's stretch in percent. */
describe('migration', () => {
  const { body, ...rest } = fitting;
  const draft0 = {
    ...rest,
    version: 0,
    person: {
      id: body.id,
      name: body.name,
      wearer: 'woman',
      measures: { 'hip-girth': 40.5, 'waist-girth': 30 },
    },
    pattern: { ...square, version: 0, cloth: { kind: 'knit', stretch: 25 }, cautions: undefined },
  };

  it('brings a fitting of draft 0 forward', () => {
    const read = readFitting(JSON.stringify(draft0));
    expect(read.version).toBe(2);
    expect(read.body.readings['hip-girth']?.[0]).toEqual({ value: 1028.7, typed: '40.5 in' });
    expect(read.body.waist).toBe('unsaid');
    expect(read.pattern.cloth).toEqual({ kind: 'knit', stretch: 0.25 });
    expect(read.pattern.cautions).toEqual([]);
  });

  it('tells where a draft 0 document is broken', () => {
    const error = fault(() => readFitting(changed(draft0, ['person', 'measures', 'hip-girth'], 'wide')));
    expect(error.where.path).toBe('person.measures.hip-girth');
  });
});

describe('version 1, which said how often a piece is cut', () => {
  /** The square as version 1 wrote it. */
  const written = (cut: unknown, more = {}) => {
    const { worn: _worn, ...piece } = square.pieces[0]!;
    return { ...square, version: 1, pieces: [{ ...piece, cut, ...more }] };
  };

  it('is read as parts that are worn', () => {
    expect(readPattern(written({ count: 2, mirrored: true }))).toEqual(square);
    const [half] = readPattern(written({ count: 1, mirrored: false }, { bodySide: 'right' })).pieces;
    expect(half!.worn).toEqual([{ side: 'right', face: 'up' }]);
    expect(half).not.toHaveProperty('bodySide');
  });

  it('draws a back for the right side', () => {
    const [back] = readPattern(written({ count: 2, mirrored: true }, { half: 'back' })).pieces;
    expect(back!.worn).toEqual(wornPair('right'));
  });

  it('is read inside a fitting of its version', () => {
    const { worn: _worn, ...piece } = square.pieces[0]!;
    const pattern = { ...square, version: 1, pieces: [{ ...piece, cut: { count: 2, mirrored: true } }] };
    expect(readFitting({ ...fitting, version: 1, pattern })).toEqual(fitting);
  });

  it.each([
    [{ count: 0, mirrored: true }, 'pieces[0].cut.count'],
    [{ count: 1e9, mirrored: true }, 'pieces[0].cut.count'],
    [{ count: 2 }, 'pieces[0].cut.mirrored'],
    ['twice', 'pieces[0].cut.count'],
  ])('that is broken is told with its place: %j', (cut, path) => {
    expect(fault(() => readPattern(written(cut))).where.path).toBe(path);
  });

  it('refuses parts of which neither none nor half are turned over', () => {
    const [piece] = square.pieces;
    const worn = [{ side: 'left', face: 'down' }];
    expect(fault(() => readPattern({ ...square, pieces: [{ ...piece, worn }] })).code).toBe('faces');
  });
});

/** Issue "main job", must hold: 2,000 mutated inputs, no crash, no hang, a message with row and column or a path. */
describe('2,000 mutated inputs', () => {
  const seeds: readonly { text: string; read: (text: string) => unknown }[] = [
    {
      text: 'measure,value,unit\nbust-girth,40 1/2,in\nwaist-girth,"81,3",cm\nhip-girth,40½,in\n',
      read: (t) => parseMeasuresCsv(t),
    },
    {
      text: 'measure;kind;unit;12;14;16\nbust-girth;body;in;34;36;38\nhip;finished;cm;98,5;103;-\n',
      read: (t) => parseChartCsv(t),
    },
    { text: JSON.stringify(fitting), read: readFitting },
    { text: writePattern(square), read: readPattern },
    { text: writeBody(fitting.body), read: readBody },
  ];
  const junk = [
    '"',
    ',',
    ';',
    '\t',
    '\n',
    '\r\n',
    '{',
    '}',
    '[',
    ']',
    ':',
    '-',
    '1e999',
    'null',
    '\0',
    '\ufeff',
    '½',
    '9'.repeat(400),
    '__proto__',
    '\\u0000',
    'é',
    '["'.repeat(60),
  ];
  const mutation = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.nat(40),
    put: fc.oneof(fc.constantFrom(...junk), fc.string({ maxLength: 6 })),
    kind: fc.constantFrom('replace', 'truncate', 'double'),
  });

  it('are read or told, within the time a person waits', () => {
    const count = { read: 0, told: 0 };
    const started = performance.now();
    fc.assert(
      fc.property(
        fc.constantFrom(...seeds),
        fc.array(mutation, { minLength: 1, maxLength: 4 }),
        ({ text, read }, mutations) => {
          let mutated = text;
          for (const { at, cut, put, kind } of mutations) {
            const i = Math.floor(at * mutated.length);
            if (kind === 'replace') mutated = mutated.slice(0, i) + put + mutated.slice(i + cut);
            else if (kind === 'truncate') mutated = mutated.slice(0, i);
            else mutated = mutated.slice(0, i) + mutated.slice(Math.max(0, i - 200));
          }
          try {
            read(mutated);
            count.read++;
          } catch (error) {
            if (!(error instanceof InputError)) throw error;
            count.told++;
            const { row, column, path } = error.where;
            expect(
              (row !== undefined && column !== undefined) || path !== undefined || row !== undefined,
              error.message,
            ).toBe(true);
            expect(error.message.length).toBeGreaterThan(15);
          }
        },
      ),
      { numRuns: 2000, seed: 20260301 },
    );
    expect(count.told).toBeGreaterThan(1000);
    expect(count.read).toBeGreaterThan(20);
    expect(performance.now() - started).toBeLessThan(60_000);
  });

  it('units typed at random are read, asked about or told', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 60 }),
        fc.constantFrom('40 1/2', '102,9 cm', '5\' 4"', '1029mm'),
        fc.nat(10),
        (noise, seed, at) => {
          const read = readLength(seed.slice(0, at) + noise + seed.slice(at), 'in');
          if (read.kind === 'length') expect(Number.isFinite(read.mm)).toBe(true);
          else expect(renderPhrase(read.message, TELL_CM).length).toBeGreaterThan(10);
        },
      ),
      { numRuns: 2000, seed: 20260301 },
    );
  });
});
