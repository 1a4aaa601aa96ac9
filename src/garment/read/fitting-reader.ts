import type { Body, Reading } from '../measure/body.ts';
import type { Pattern } from '../pattern.ts';
import type { Fabric, Fitting, Meant, Observation, PaperChoices, PlanChoices, Step } from '../fitting.ts';
import {
  byKind,
  date,
  fields,
  flag,
  list,
  maybe,
  name,
  number,
  oneOf,
  parseJson,
  record,
  text,
  yes,
  type Read,
} from './json.ts';
import { MEASURE_IDS } from '../measure/measure-id.ts';
import { readLay } from './lay-reader.ts';
import { migrate } from './migrate.ts';
import { readPatternValue, readWaist, readWearer } from './pattern-reader.ts';
import { writeJson } from './write-json.ts';

const readReading = fields<Reading>({
  value: number(0.01, 20_000),
  typed: maybe(text(200)),
  on: maybe(date),
  side: maybe(oneOf('left', 'right')),
  sure: maybe(yes),
});

const bodyFields = {
  id: name,
  name: text(200),
  wearer: readWearer,
  show: oneOf('in', 'cm'),
  waist: readWaist,
  readings: record(oneOf(...MEASURE_IDS), list(readReading, 0, 200)),
  notes: maybe(text()),
} as const;
const readBodyValue: Read<Body> = fields<Body>(bodyFields);

/** A body as a file of its own, so that it can be kept, carried and erased apart from any garment. */
export interface BodyDocument extends Body {
  readonly format: 'pintrue-body';
  readonly version: 1;
}
const readBodyDocument = fields<BodyDocument>({
  format: oneOf('pintrue-body'),
  version: oneOf(1),
  ...bodyFields,
});

const readFabric = fields<Fabric>({
  name: text(200),
  kind: oneOf('woven', 'knit'),
  stretch: maybe(number(0, 4)),
  useful: maybe(number(0, 1)),
  shrinkLength: maybe(number(-0.5, 0.9)),
  shrinkWidth: maybe(number(-0.5, 0.9)),
});

const readChoices = fields<PlanChoices>({
  category: maybe(oneOf('close', 'fitted', 'semi-fitted', 'loose', 'very-loose')),
  ease: record(name, number(-5_000, 5_000)),
  size: record(name, name),
  between: maybe(oneOf('smaller', 'larger', 'nearest')),
  method: oneOf('whole', 'part'),
  upperBust: oneOf('chart-difference', 'two-inches', 'straight', 'off'),
  still: list(name, 0, 2_000),
  front: record(name, number(-10, 10)),
});

type StepOf<K extends Step['kind']> = Extract<Step, { kind: K }>;
const readParam: Read<number | string | boolean> = (value, at) => {
  if (typeof value === 'number') return number()(value, at);
  return typeof value === 'boolean' ? value : text(2_000)(value, at);
};
const readStep: Read<Step> = byKind<Step>({
  alter: fields<StepOf<'alter'>>({
    id: name,
    kind: oneOf('alter'),
    entry: name,
    params: record(name, readParam),
    answers: maybe(list(name)),
    note: maybe(text()),
    off: maybe(flag),
  }),
  true: fields<StepOf<'true'>>({
    id: name,
    kind: oneOf('true'),
    seams: maybe(list(name)),
    keep: maybe(record(name, oneOf('a', 'b'))),
    note: maybe(text()),
    off: maybe(flag),
  }),
});

const readObservation = fields<Observation>({
  id: name,
  line: name,
  where: oneOf('front', 'back', 'all', 'left', 'right'),
  direction: oneOf('low', 'high', 'forward', 'back', 'tight', 'loose', 'gapes', 'folds', 'drags'),
  centre: maybe(number(-2_000, 2_000)),
  side: maybe(number(-2_000, 2_000)),
  note: maybe(text()),
  photos: maybe(list(text(4_000_000), 0, 20)),
});

const readMeant = fields<Meant>({
  code: name,
  where: fields<Meant['where']>({
    piece: maybe(name),
    edge: maybe(name),
    seam: maybe(name),
    level: maybe(name),
    measure: maybe(name),
    step: maybe(name),
    size: maybe(text(200)),
  }),
  amounts: list(number(), 0, 40),
  reason: text(2_000),
  on: date,
});

const readPaper = fields<PaperChoices>({
  paper: maybe(name),
  allowances: flag,
  nest: oneOf('faint', 'off'),
  pieces: maybe(list(name)),
});

const shapeWith = (readPatternIn: Read<Pattern>): Read<Fitting> =>
  fields<Fitting>({
    format: oneOf('pintrue-fitting'),
    version: oneOf(2),
    id: name,
    title: text(200),
    on: date,
    body: readBodyValue,
    pattern: readPatternIn,
    fabric: readFabric,
    choices: readChoices,
    steps: list(readStep, 0, 1_000),
    observations: list(readObservation, 0, 1_000),
    meant: maybe(list(readMeant, 0, 1_000)),
    paper: readPaper,
    lay: maybe(readLay),
    notes: text(200_000),
  });
const readShape = shapeWith(readPatternValue);

/**
 * Reads a fitting document (JSON text, or the parsed value), brought forward from older versions and checked to the last field.
 * @throws InputError with the path in the document (or row and column where the JSON is broken)
 */
export function readFitting(source: unknown): Fitting {
  return readShape(migrate(parseJson(source), 'pintrue-fitting'), '');
}

/**
 * A reader of many fittings that stand on few patterns, as the states of one fitting do: the same parsed pattern is read once and is one
 * object in all of them.
 */
export function fittingsReader(): (source: unknown) => Fitting {
  const known = new Map<unknown, Pattern>();
  const read = shapeWith((value, at) => {
    const pattern = known.get(value) ?? readPatternValue(value, at);
    known.set(value, pattern);
    return pattern;
  });
  return (source) => read(migrate(parseJson(source), 'pintrue-fitting'), '');
}

/** Reads a body document. @throws InputError with the path in the document */
export function readBody(source: unknown): Body {
  const {
    format: _format,
    version: _version,
    ...body
  } = readBodyDocument(migrate(parseJson(source), 'pintrue-body'), '');
  return body;
}

/** The fitting as text: fields in one fixed order, keys sorted, so that the same document is the same bytes. Reads back equal. @throws InputError if it is not a valid fitting */
export function writeFitting(fitting: Fitting): string {
  return writeJson(readFitting(fitting));
}

/** A body as a document of its own; see `writeFitting`. */
export function writeBody(body: Body): string {
  return writeJson(readBodyDocument({ format: 'pintrue-body', version: 1, ...body }, ''));
}
