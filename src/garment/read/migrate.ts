import { MM_PER } from '../words/length-unit.ts';
import { foundIn, wrong } from './json.ts';
import { layThatHolds } from './lay-reader.ts';
import { patternVersion2 } from './pattern-version-2.ts';
import { lineOfWords, namesToRoles } from './names-to-roles.ts';

type Format = 'pintrue-fitting' | 'pintrue-pattern' | 'pintrue-body' | 'pintrue-person';
type Document = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Document =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * Draft 0 of the body kept one number per measure, in inches, under `measures`, and had neither `waist` nor repeats.
 * Inside a fitting it stood under `person`.
 */
function bodyFromDraft0(value: unknown, at: string): Document {
  if (!isRecord(value)) wrong(at, 'not-a-record', { found: foundIn(value) });
  const { measures, ...rest } = value;
  if (!isRecord(measures)) wrong(`${at}.measures`, 'not-a-record', { found: foundIn(measures) });
  const readings = Object.entries(measures).map(([id, inches]) => {
    if (typeof inches !== 'number')
      wrong(`${at}.measures.${id.slice(0, 60)}`, 'not-a-number', { found: foundIn(inches) });
    return [id, [{ value: inches * MM_PER.in, typed: `${inches} in` }]] as const;
  });
  return { waist: 'unsaid', show: 'in', ...rest, readings: Object.fromEntries(readings) };
}

function fittingFromDraft0(doc: Document): Document {
  const { person, pattern, ...rest } = doc;
  return {
    observations: [],
    notes: '',
    ...rest,
    version: 1,
    body: bodyFromDraft0(person, 'person'),
    pattern: isRecord(pattern) && pattern['version'] === 0 ? patternFromDraft0(pattern) : pattern,
  };
}

/** Draft 0 of the pattern gave a knit's stretch in percent and had no cautions. */
function patternFromDraft0(doc: Document): Document {
  const cloth = doc['cloth'];
  const stretch = isRecord(cloth) ? cloth['stretch'] : undefined;
  return {
    cautions: [],
    ...doc,
    version: 1,
    cloth: isRecord(cloth) && typeof stretch === 'number' ? { ...cloth, stretch: stretch / 100 } : cloth,
  };
}

/** Version 1 kept what pieces and edges are in their names, and `cut` for `worn`. */
const patternFrom1 = (doc: Document, at = ''): Document => patternVersion2(namesToRoles(doc), at);

/** Version 1 wrote `smaller` between two sizes whenever nothing was asked for: it is asked for nothing. */
function choicesFrom1(choices: unknown): unknown {
  if (!isRecord(choices) || choices['between'] !== 'smaller') return choices;
  const { between: _usual, ...rest } = choices;
  return rest;
}

/** With its pattern, and of its cloths only what is a setting of theirs; what was seen in a trial was stored as it was typed. */
function fittingFrom1(doc: Document): Document {
  const { pattern, observations } = doc;
  return {
    ...doc,
    ...('choices' in doc ? { choices: choicesFrom1(doc['choices']) } : {}),
    ...(doc['lay'] === undefined ? {} : { lay: layThatHolds(doc['lay']) }),
    version: 2,
    pattern: isRecord(pattern) && pattern['version'] === 1 ? patternFrom1(pattern, 'pattern') : pattern,
    observations: Array.isArray(observations)
      ? observations.map((seen: unknown) =>
          isRecord(seen) && typeof seen['line'] === 'string'
            ? { ...seen, line: lineOfWords(seen['line']) }
            : seen,
        )
      : observations,
  };
}

/**
 * The person's file once held the body bare beside its fittings, under a version that nobody read and some files lacked: the body had no
 * version of its own, so it was of version 1.
 */
function personFromBare(doc: Document): Document {
  const { body, ...rest } = doc;
  if (!isRecord(body)) wrong('body', 'not-a-record', { found: foundIn(body) });
  return { fittings: [], ...rest, version: 2, body: { format: 'pintrue-body', version: 1, ...body } };
}

/** Version 2 held no past: nothing of what was done before, no versions, no photographs. */
const personFrom2 = (doc: Document): Document => ({ ...doc, version: 3 });

/** From each older version to the one after it. A document is carried along the chain until none applies. */
const CHAIN: Readonly<Record<Format, readonly ((doc: Document) => Document)[]>> = {
  'pintrue-fitting': [fittingFromDraft0, fittingFrom1],
  'pintrue-pattern': [patternFromDraft0, (doc) => patternFrom1(doc)],
  'pintrue-person': [(doc) => ({ ...doc, version: 1 }), personFromBare, personFrom2],
  'pintrue-body': [(doc) => ({ ...bodyFromDraft0(doc, ''), version: 1 })],
};

/**
 * Brings a parsed document of the expected format to the newest version; the caller's value is never changed.
 * @throws InputError when it is another format or from a newer version than this one knows
 */
export function migrate(value: unknown, format: Format): unknown {
  if (!isRecord(value)) wrong('', 'not-a-document', { wanted: format });
  if (value['format'] !== format) {
    const found = typeof value['format'] === 'string' ? value['format'].slice(0, 40) : null;
    wrong('format', 'other-format', { wanted: format, found });
  }
  const newest = CHAIN[format].length;
  const version = value['version'] ?? (format === 'pintrue-person' ? 0 : undefined);
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) wrong('version', 'version');
  if (version > newest) wrong('version', 'newer-version', { version, newest });
  return CHAIN[format].slice(version).reduce<Document>((doc, step) => step(doc), value);
}
