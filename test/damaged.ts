import {
  writeBody,
  writeFitting,
  writePattern,
  writePerson,
  type Fitting,
  type Person,
} from '../src/garment/index.ts';
import { demoFittings } from '../src/samples/index.ts';

/** A file that cannot be used: its name, what is in it, and what the desk is told about it. */
export interface Damaged {
  readonly what: string;
  readonly file: string;
  readonly content: string | Uint8Array;
  readonly table?: 'measures' | 'sizes';
  /** The first problem's code. */
  readonly code: string;
}

type Way = readonly (string | number)[];

/** A copy of plain data with another value at a place in it; `undefined` takes it away. */
function changed(value: unknown, way: Way, to: unknown): unknown {
  const [step, ...rest] = way;
  if (step === undefined) return to;
  const copy = Array.isArray(value) ? [...(value as unknown[])] : { ...(value as object) };
  (copy as Record<string | number, unknown>)[step] = changed(
    (value as Record<string | number, unknown>)[step],
    rest,
    to,
  );
  return copy;
}

/** Everything in it: a woven skirt with darts, two steps and a setting of its cloth. */
const sound = (): Fitting => {
  const fitting = demoFittings().find(({ pattern }) => pattern.pieces.some((p) => p.darts.length > 0))!;
  const steps: Fitting['steps'] = [
    { id: 'longer', kind: 'alter', entry: 'length-above-waist', params: { back: 20 } },
    { id: 'even', kind: 'true', keep: { side: 'a' } },
  ];
  return { ...fitting, steps, lay: { shell: { width: 1400 } } };
};

const darted = (fitting: Fitting): number => fitting.pattern.pieces.findIndex((p) => p.darts.length > 0);

/** A person with one fitting, begun and photographed. */
function withPast(fitting: Fitting): Person {
  const states = [{ doc: fitting, say: 'Began', on: '2026-01-31' }];
  const photos = [{ id: 'p', jpeg: '/9j/' }];
  const past = { fittings: { [fitting.id]: { at: 0, states, versions: [], photos } } };
  return { body: fitting.body, fittings: [fitting], past };
}

function documents(): Damaged[] {
  const fitting = sound();
  const at = darted(fitting);
  const piece: Way = ['pieces', at];
  const own = fitting.pattern.pieces[at]!;
  const [first] = own.edges;
  const written = {
    fitting: JSON.parse(writeFitting(fitting)) as unknown,
    pattern: JSON.parse(writePattern(fitting.pattern)) as unknown,
    body: JSON.parse(writeBody(fitting.body)) as unknown,
    person: JSON.parse(writePerson(withPast(fitting))) as unknown,
  };
  type Kind = keyof typeof written;
  const one = (kind: Kind, code: string, way: Way, to: unknown): Damaged => ({
    what: `a ${kind} with ${way.join('.')} ${JSON.stringify(to)?.slice(0, 30) ?? 'taken away'}`,
    file: `${kind}.json`,
    content: JSON.stringify(changed(written[kind], way, to)),
    code,
  });
  const raw = (what: string, code: string, content: string): Damaged => ({
    what,
    file: 'it.json',
    content,
    code,
  });
  return [
    // Types.
    one('fitting', 'not-text', ['title'], 7),
    one('fitting', 'not-text', ['notes'], null),
    one('fitting', 'not-a-record', ['body'], 'Ada'),
    one('fitting', 'not-a-record', ['pattern'], true),
    one('fitting', 'not-a-list', ['steps'], { first: 1 }),
    one('fitting', 'not-a-number', ['lay', 'shell', 'width'], '140 cm'),
    one('fitting', 'not-yes-or-no', ['paper', 'allowances'], 'yes'),
    one('body', 'not-a-list', ['readings', 'bust-girth'], 900),
    one('body', 'not-a-number', ['readings', 'bust-girth'], [{ value: null }]),
    one('pattern', 'not-true', [...piece, 'unsure'], false),
    one('pattern', 'not-a-list', ['pieces'], 12),
    // Fields.
    one('fitting', 'missing', ['choices'], undefined),
    one('fitting', 'missing', ['steps', 1, 'kind'], undefined),
    one('fitting', 'unknown-field', ['colour'], 'red'),
    one('pattern', 'missing', [...piece, 'edges', 0, 'allowance'], undefined),
    one('person', 'missing', ['body', 'show'], undefined),
    one('person', 'missing', ['fittings', 0, 'fabric'], undefined),
    // Words, names and ids.
    one('fitting', 'not-one-of', ['body', 'wearer'], 'giant'),
    one('fitting', 'not-one-of', ['choices', 'method'], 'magic'),
    one('fitting', 'not-one-of', ['steps', 0, 'kind'], 'fold'),
    one('fitting', 'not-one-of', ['lay', 'shell', 'nap'], 'furry'),
    one('fitting', 'not-a-date', ['on'], 'yesterday'),
    one('body', 'not-one-of', ['readings', 'ear-girth'], []),
    one('body', 'too-long', ['name'], 'a'.repeat(30_000)),
    one('pattern', 'empty', [...piece, 'edges', 0, 'id'], ''),
    one('pattern', 'reserved-name', [...piece, 'id'], 'toString'),
    one('pattern', 'name-twice', [...piece, 'edges', 1, 'id'], first!.id),
    one('pattern', 'name-twice', ['pieces', at === 0 ? 1 : 0, 'id'], own.id),
    one('pattern', 'name-twice', ['chart', 'sizes', 1, 'id'], fitting.pattern.chart.sizes[0]!.id),
    one('pattern', 'unknown-piece', ['seams', 0, 'a', 0, 'piece'], 'wing'),
    one('pattern', 'unknown-edge', ['seams', 0, 'a', 0, 'edge'], 'rim'),
    one('pattern', 'unknown-seam', ['bands'], [{ piece: own.id, seam: 'elsewhere' }]),
    // Numbers.
    one('pattern', 'out-of-range', [...piece, 'edges', 0, 'allowance'], -4),
    one('pattern', 'not-whole', [...piece, 'number'], 1.5),
    one('fitting', 'out-of-range', ['lay', 'shell', 'width'], 1e9),
    one('pattern', 'path-length', [...piece, 'edges', 0, 'path', 0], first!.path[0]!.concat(first!.path[0]!)),
    one(
      'pattern',
      'topology',
      [...piece, 'edges', 0, 'path', 1],
      [...first!.path[1]!, ...first!.path[1]!.slice(0, 3)],
    ),
    one('pattern', 'outline-open', [...piece, 'edges', 0, 'path', 0, first!.path[0]!.length - 1, 'x'], 5_000),
    one('pattern', 'sizes-differ', [...piece, 'edges', 0, 'path'], first!.path.slice(1)),
    one('pattern', 'dart-legs', [...piece, 'darts', 0, 'legs'], [first!.id, first!.id]),
    one(
      'pattern',
      'faces',
      [...piece, 'worn'],
      [
        { side: 'left', face: 'up' },
        { side: 'left', face: 'down' },
        { side: 'right', face: 'down' },
      ],
    ),
    one('pattern', 'range', ['seams', 0, 'join'], { kind: 'eased', least: 9, most: 3 }),
    one('pattern', 'list-length', [...piece, 'edges'], []),
    one('pattern', 'list-length', [...piece, 'darts', 0, 'legs'], [first!.id]),
    // Versions and kinds of document.
    one('fitting', 'newer-version', ['version'], 99),
    one('body', 'version', ['version'], 'one'),
    one('person', 'version', ['version'], -1),
    one('person', 'other-format', ['body', 'format'], 'pintrue-pattern'),
    one('person', 'other-format', ['body', 'format'], undefined),
    one('person', 'not-a-document', ['fittings', 0], 7),
    one('person', 'not-a-record', ['fittings', 0], 'a fitting'),
    one('person', 'not-a-photograph', ['past', 'fittings', fitting.id, 'photos', 0, 'jpeg'], 'AAAA'),
    one('person', 'out-of-range', ['past', 'fittings', fitting.id, 'at'], 1),
    one('person', 'out-of-range', ['past', 'fittings', fitting.id, 'states', 0, 'doc', 'pattern'], 1),
    one('person', 'not-one-of', ['past', 'fittings', fitting.id, 'states', 0, 'doc', 'id'], 'another'),
    one('fitting', 'unknown-document', ['format'], 'another-program'),
    raw('a list for a document', 'unknown-document', '[1, 2]'),
    raw('a text cut short', 'not-json', JSON.stringify(written.body).slice(0, 300)),
    raw('a comma too many', 'not-json', '{\n  "format": "pintrue-body",,\n}'),
    raw('brackets in brackets', 'too-deep', '['.repeat(60) + ']'.repeat(60)),
    raw('a draft whose body is none', 'not-a-record', '{"format":"pintrue-fitting","version":0,"person":3}'),
    raw(
      'a draft with a measure in words',
      'not-a-number',
      '{"format":"pintrue-body","version":0,"measures":{"bust-girth":"forty"}}',
    ),
    raw(
      'a piece of version 1 that is cut half a time',
      'out-of-range',
      '{"format":"pintrue-pattern","version":1,"pieces":[{"id":"p","name":"P","edges":[],"cut":{"count":0.5,"mirrored":true}}]}',
    ),
    raw('a person without a body', 'not-a-record', '{"format":"pintrue-person","version":1,"fittings":[]}'),
  ];
}

const MEASURES = 'measure,value,unit\n';
const SIZES = 'measure,kind,unit,10,12,14\n';

function tables(): Damaged[] {
  const measures = (code: string, rows: string): Damaged => ({
    what: `measures ${JSON.stringify(rows.slice(0, 40))}`,
    file: 'ada.csv',
    content: rows.startsWith('!') ? rows.slice(1) : MEASURES + rows,
    table: 'measures',
    code,
  });
  const sizes = (code: string, rows: string): Damaged => ({
    what: `sizes ${JSON.stringify(rows.slice(0, 40))}`,
    file: 'table.csv',
    content: rows.startsWith('!') ? rows.slice(1) : SIZES + rows,
    table: 'sizes',
    code,
  });
  return [
    measures('empty', '!'),
    measures('empty', ''),
    measures('header', '!name,size\nbust,40\n'),
    measures('header', '!measure,value\nbust,40\n'),
    measures('empty', 'bust,,in'),
    measures('unknown-measure', 'bsut,40,in'),
    measures('unknown-measure', 'zzzzzzzzz,40,in'),
    measures('unit', 'bust,40,'),
    measures('unit', 'bust,40,ells'),
    measures('unknown-unit', 'bust,40 ells,in'),
    measures('too-many-cells', 'bust,102,9,cm'),
    measures('open-quote', 'bust,"40,in'),
    measures('text-after-quote', 'bust,"40" 1/2,in'),
    measures('not-a-number', 'bust,much,cm'),
    measures('unknown-unit', 'bust,4o,cm'),
    measures('two-numbers', 'bust,40 5,in'),
    measures('odd-fraction', 'bust,40 1/7,in'),
    measures('odd-fraction', 'bust,40 9/8,in'),
    measures('zero-denominator', 'bust,40 1/0,in'),
    measures('too-many-inches', `height,"5' 14""",in`),
    measures('negative', 'bust,-40,in'),
    measures('zero', 'bust,0,in'),
    measures('too-large', 'bust,4000,in'),
    measures('too-long', `bust,${'4'.repeat(60)},in`),
    measures('thousands-or-decimal', 'bust,"1,029",mm'),
    measures('not-degrees', 'shoulder-slope,steep,in'),
    measures('side', '!measure,value,unit,side\nbust,40,in,middle\n'),
    measures('too-many-columns', ','.repeat(400)),
    measures('too-many-rows', 'bust,40,in\n'.repeat(6000)),
    measures('not-text', 'bust,\0,in'),
    measures('unknown-measure', 'bsut,40,in\nwaist,much,cm\nhip,1,ells\n'),
    sizes('empty', ''),
    sizes('no-sizes', '!measure,kind,unit\nbust,body,in\n'),
    sizes('empty', '!measure,kind,unit,10,,14\nbust,body,in,32,34,36\n'),
    sizes('too-long', `!measure,kind,unit,${'x'.repeat(50)}\nbust,body,in,32\n`),
    sizes('size-twice', '!measure,kind,unit,10,10\nbust,body,in,32,34\n'),
    sizes('sizes-fall', 'bust,body,in,36,34,32'),
    sizes('kind', 'bust,skin,in,32,34,36'),
    sizes('row-twice', 'bust,body,in,32,34,36\nbust,body,in,32,34,36'),
    sizes('empty', 'bust,body,in,,-,'),
    sizes('unknown-measure', 'beak,body,in,32,34,36'),
    sizes('unit', '!Size,10,12\nBust,32,34\n'),
    sizes('not-a-number', 'bust,body,in,32,wide,36'),
    sizes('too-many-cells', 'bust,body,in,32,34,36,38'),
  ];
}

/** Damaged files of every kind that the desk opens. */
export const damaged = (): readonly Damaged[] => [...documents(), ...tables()];
