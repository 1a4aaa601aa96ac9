import {
  phraseOf,
  renderPhrase,
  TELL_BOTH,
  tellError,
  ToldError,
  type Phrase,
  type Tell,
} from '../../garment/index.ts';
import { WORKBENCH_WORDS } from './words-table.ts';

/** A phrase that came over from a worker, thrown anew. */
export const told = (phrase: Phrase): ToldError => new ToldError(renderPhrase(phrase, TELL_BOTH), phrase);

/** An error of the page's own. The compiler asks of each code the values that its sentence says. */
export const pageError = <C extends keyof typeof WORKBENCH_WORDS>(
  code: C,
  ...[values]: Parameters<(typeof WORKBENCH_WORDS)[C]>
): ToldError => told(phraseOf(WORKBENCH_WORDS, code, values));

/** Whatever was thrown, with a sentence: what nobody foresaw is our fault, and its own words are only quoted. */
export function asTold(thrown: unknown): ToldError {
  if (thrown instanceof ToldError) return thrown;
  return pageError('program-fault', { says: thrown instanceof Error ? thrown.message : String(thrown) });
}

/** What went wrong, for one person. */
export const tellTrouble = (thrown: unknown, tell: Tell): string => tellError(asTold(thrown), tell);

/** A call that was ended on purpose: nothing to tell. */
export class Stopped extends Error {
  constructor() {
    super('stopped');
    this.name = 'Stopped';
  }
}
