import type { Phrase } from './words/phrase.ts';

/** An error whose sentence can still be said in the person's unit: `message` has both units. It crosses a worker as its phrase. */
export class ToldError extends Error {
  readonly phrase: Phrase;

  constructor(message: string, phrase: Phrase) {
    super(message);
    this.name = 'ToldError';
    this.phrase = phrase;
  }
}
