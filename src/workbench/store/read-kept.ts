import { readBody, readFitting, readPattern } from '../../garment/index.ts';
import type { AnyDoc, Kind } from './kinds.ts';

/**
 * Checks a document as it comes from disk, to the last field, and brings an older one forward. One that is sound and of today's
 * form is given back as the same object, so that its pattern stays shared. Throws InputError otherwise.
 */
export function readKept(kind: Kind, doc: AnyDoc): AnyDoc {
  if (kind === 'person') return readBody({ format: 'pintrue-body', version: 1, ...doc });
  const read = kind === 'fitting' ? readFitting(doc) : readPattern(doc);
  return read.version === (doc as { version: number }).version ? doc : read;
}
