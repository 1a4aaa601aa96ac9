import type { Body } from '../measure/body.ts';
import type { Fitting } from '../fitting.ts';
import { InputError } from '../input-error.ts';
import { readBody, readFitting, writeBody, writeFitting } from './fitting-reader.ts';
import { fields, list, oneOf, parseJson, wrong, type Read } from './json.ts';
import { migrate } from './migrate.ts';
import { writeJson } from './write-json.ts';

/** Everything kept of one person: what they take along, or what a class keeps of a pupil. */
export interface Person {
  readonly body: Body;
  readonly fittings: readonly Fitting[];
}

/** The person's file: a body document and fitting documents, each with its own version, so that each is brought forward by itself. */
interface PersonDocument extends Person {
  readonly format: 'pintrue-person';
  readonly version: 2;
}

/** A document within a document: read by its own reader, its faults told under its own path. */
const within =
  <T>(read: (source: unknown) => T): Read<T> =>
  (value, at) => {
    // A text would be read as a file of its own.
    if (typeof value === 'string') wrong(at, 'not-a-record', { found: 'text' });
    try {
      return read(value);
    } catch (error) {
      throw error instanceof InputError ? error.under(at) : error;
    }
  };

/** Most fittings of one person in one file. */
const MOST_FITTINGS = 500;
const readPersonDocument = fields<PersonDocument>({
  format: oneOf('pintrue-person'),
  version: oneOf(2),
  body: within(readBody),
  fittings: list(within(readFitting), 0, MOST_FITTINGS),
});

/** Reads a person's file, of any version. @throws InputError with the path in the document */
export function readPerson(source: unknown): Person {
  const { body, fittings } = readPersonDocument(migrate(parseJson(source), 'pintrue-person'), '');
  return { body, fittings };
}

/** A person's file as text: same person, same bytes. @throws InputError if a part of it is not valid */
export function writePerson({ body, fittings }: Person): string {
  return writeJson({
    format: 'pintrue-person',
    version: 2,
    body: JSON.parse(writeBody(body)) as unknown,
    fittings: fittings.map((fitting) => JSON.parse(writeFitting(fitting)) as unknown),
  });
}
