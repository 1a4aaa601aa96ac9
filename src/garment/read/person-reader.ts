import type { Fitting } from '../fitting.ts';
import type { Body } from '../measure/body.ts';
import type { Past, Person } from '../past.ts';
import { fittingsReader, readBody, readFitting, writeBody, writeFitting } from './fitting-reader.ts';
import { fields, list, maybe, oneOf, parseJson, record, name, wrong, type Maybe, type Read } from './json.ts';
import { migrate } from './migrate.ts';
import { patternNumbers, readPast, withNumbered, within } from './past-reader.ts';
import { writeJson } from './write-json.ts';

/**
 * The person's file: a body document and fitting documents, each with its own version, so that each is brought forward by itself. So are
 * the states of the past; those of fittings hold the number of their pattern among `patterns`, for a hundred of them share one.
 */
interface PersonDocument {
  readonly format: 'pintrue-person';
  readonly version: 3;
  readonly body: Body;
  readonly fittings: readonly Fitting[];
  readonly past?: PastDocument;
}
interface PastDocument {
  readonly patterns: readonly unknown[];
  readonly body?: unknown;
  readonly fittings: Readonly<Record<string, unknown>>;
}

/** Most fittings of one person in one file. */
const MOST_FITTINGS = 500;
const asItIs: Read<unknown> = (value) => value;
const readPersonDocument = fields<PersonDocument>({
  format: oneOf('pintrue-person'),
  version: oneOf(3),
  body: within(readBody),
  fittings: list(within(readFitting), 0, MOST_FITTINGS),
  past: maybe(
    fields<PastDocument>({
      patterns: list(asItIs),
      body: maybe(asItIs) as Maybe<unknown>,
      fittings: record(name, asItIs),
    }),
  ),
});

/** Reads a person's file, of any version. @throws InputError with the path in the document */
export function readPerson(source: unknown): Person {
  const { body, fittings, past } = readPersonDocument(migrate(parseJson(source), 'pintrue-person'), '');
  if (!past) return { body, fittings };
  const read = withNumbered(past.patterns, fittingsReader());
  const known = fittings.map((fitting) => fitting.id);
  const pasts = Object.entries(past.fittings).map(([id, value]) => {
    const at = `past.fittings.${id}`;
    if (!known.includes(id)) wrong(at, 'not-one-of', { given: id, known });
    return [id, readPast(id, read)(value, at)] as const;
  });
  const own = past.body === undefined ? {} : { body: readPast(body.id, readBody)(past.body, 'past.body') };
  return { body, fittings, past: { ...own, fittings: Object.fromEntries(pasts) } };
}

/** The same past with its documents written another way. */
const pastWith = <A, B>(past: Past<A>, write: (doc: A) => B): Past<B> => ({
  at: past.at,
  states: past.states.map(({ say, on, doc }) => ({ say, on, doc: write(doc) })),
  versions: past.versions.map((version) => ({ name: version.name, on: version.on, doc: write(version.doc) })),
  photos: past.photos,
});

function writePast({ body, fittings }: NonNullable<Person['past']>): PastDocument {
  const read = fittingsReader();
  const numbers = patternNumbers();
  const numbered = (fitting: Fitting): unknown => {
    const whole = read(fitting);
    return { ...whole, pattern: numbers.of(whole.pattern) };
  };
  const written = Object.entries(fittings).map(([id, past]) => [id, pastWith(past, numbered)] as const);
  return {
    patterns: numbers.all,
    ...(body ? { body: pastWith(body, (doc) => JSON.parse(writeBody(doc)) as unknown) } : {}),
    fittings: Object.fromEntries(written),
  };
}

/** A person's file as text: same person, same bytes. @throws InputError if a part of it is not valid */
export function writePerson({ body, fittings, past }: Person): string {
  return writeJson({
    format: 'pintrue-person',
    version: 3,
    body: JSON.parse(writeBody(body)) as unknown,
    fittings: fittings.map((fitting) => JSON.parse(writeFitting(fitting)) as unknown),
    ...(past ? { past: writePast(past) } : {}),
  });
}
