import type { Phrase } from '../words/phrase.ts';
import type { FindingValues } from '../words/table.ts';
import type { MeasureId } from './measure-id.ts';

/**
 * Something doubtful about an entry, put to the person instead of being guessed. The entry stands as typed until they answer.
 * `suggest` is what they may have meant, in mm, with the words for the button. Its sentence: `sayQuestion`.
 */
export interface Question {
  /** Stable, kebab-case: a row of QUESTION_WORDS. */
  readonly code: string;
  readonly measure: MeasureId;
  /** The other entry concerned, when two may have been exchanged. */
  readonly other?: MeasureId;
  readonly values: FindingValues;
  readonly suggest?: { readonly value: number; readonly say: Phrase };
}
