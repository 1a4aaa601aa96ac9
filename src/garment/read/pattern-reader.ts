import { GARMENT_KINDS } from '../garment-kind-table.ts';
import type { SizeChart } from '../chart.ts';
import {
  byKind,
  fields,
  flag,
  list,
  maybe,
  name,
  number,
  oneOf,
  orNull,
  record,
  text,
  parseJson,
  type Read,
} from './json.ts';
import { MEASURE_IDS } from '../measure/measure-id.ts';
import { migrate } from './migrate.ts';
import { checkPattern } from './pattern-check.ts';
import type { ClothNeed, Pattern } from '../pattern.ts';
import { writeJson } from './write-json.ts';
import { readBand, readFollower, readGarmentLevel, readPiece, readSeam } from './piece-reader.ts';

const measureId = oneOf(...MEASURE_IDS);
const row = list(orNull(number(0.1, 20_000)), 1, 60);

export const readWearer = oneOf('woman', 'man', 'child');
export const readWaist = oneOf('natural', 'iso', 'unsaid');

const readChart: Read<SizeChart> = fields<SizeChart>({
  sizes: list(fields<SizeChart['sizes'][number]>({ id: name, label: text(200) }), 1, 60),
  waist: readWaist,
  body: record(measureId, row),
  finished: record(name, row),
  finishedLengths: record(measureId, row),
  source: maybe(text()),
});

const readCloth: Read<ClothNeed> = byKind<ClothNeed>({
  woven: fields<Extract<ClothNeed, { kind: 'woven' }>>({ kind: oneOf('woven') }),
  knit: fields<Extract<ClothNeed, { kind: 'knit' }>>({ kind: oneOf('knit'), stretch: number(0, 4) }),
});

const readShape: Read<Pattern> = fields<Pattern>({
  format: oneOf('pintrue-pattern'),
  version: oneOf(2),
  id: name,
  name: text(200),
  about: text(),
  garment: oneOf(...GARMENT_KINDS),
  wearer: readWearer,
  cloth: readCloth,
  bustDifference: maybe(number(0, 300)),
  chart: readChart,
  pieces: list(readPiece, 0, 300),
  seams: list(readSeam, 0, 2_000),
  followers: list(readFollower, 0, 300),
  bands: list(readBand, 0, 300),
  levels: list(readGarmentLevel, 0, 40),
  endsAt: maybe(name),
  nightwear: maybe(flag),
  cautions: list(name, 0, 40),
});

/** A pattern inside another document: its shape, then what its parts refer to. */
export const readPatternValue: Read<Pattern> = (value, at) => {
  const pattern = readShape(value, at);
  checkPattern(pattern, at);
  return pattern;
};

/**
 * Reads a pattern document (JSON text, or the parsed value), brought forward from older versions.
 * @throws InputError with the path in the document (or row and column where the JSON is broken)
 */
export function readPattern(source: unknown): Pattern {
  return readPatternValue(migrate(parseJson(source), 'pintrue-pattern'), '');
}

/** The pattern as text: fields in one fixed order, keys sorted, so that the same document is the same bytes. Reads back equal. @throws InputError if it is not a valid pattern */
export function writePattern(pattern: Pattern): string {
  return writeJson(readPattern(pattern));
}
