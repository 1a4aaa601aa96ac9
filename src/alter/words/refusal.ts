import {
  phraseOf,
  renderPhrase,
  TELL_BOTH,
  ToldError,
  type Finding,
  type FindingValues,
  type ValuesOf,
} from '../../garment/index.ts';
import { ALTER_WORDS } from './words-table.ts';

/**
 * An alteration that cannot be done on this pattern as asked. Thrown inside the room, caught by `applyStep`, which turns it into a finding
 * and leaves the garment as it was: never half an alteration. The compiler asks of each code the values that its sentence says.
 */
export class Refusal<C extends keyof typeof ALTER_WORDS = keyof typeof ALTER_WORDS> extends ToldError {
  readonly code: C;
  readonly where: Finding['where'];
  readonly amount: number | undefined;
  readonly values: FindingValues;

  constructor(
    code: C,
    values: ValuesOf<typeof ALTER_WORDS, C>,
    where: Finding['where'] = {},
    amount?: number,
  ) {
    const phrase = phraseOf(ALTER_WORDS, code, values as FindingValues);
    super(renderPhrase(phrase, TELL_BOTH), phrase);
    this.name = 'Refusal';
    this.code = code;
    this.where = where;
    this.amount = amount;
    this.values = values as FindingValues;
  }

  /** The same news as a finding. */
  finding(): Finding {
    const { code, where, values, amount } = this;
    return { code, severity: 'error', where, values, ...(amount === undefined ? {} : { amount }) };
  }
}
