import type { ParseArgsConfig } from 'node:util';
import {
  phraseOf,
  renderPhrase,
  TELL_BOTH,
  ToldError,
  type Body,
  type Finding,
  type FindingValues,
  type Phrase,
  type Tell,
} from '../garment/index.ts';
import type { Pipeline } from '../pipeline/index.ts';
import type { Io } from './io.ts';
import { USAGE_WORDS } from './usage-word-table.ts';

/** Options as node:util describes them. */
export type OptionConfig = NonNullable<ParseArgsConfig['options']>;

/** Values of the options as typed; an option that may be given more than once is a list. */
export type Options = Readonly<Record<string, string | boolean | readonly (string | boolean)[] | undefined>>;

export interface Call {
  readonly words: readonly string[];
  readonly options: Options;
  readonly io: Io;
  /** How things are said to whoever the files opened until now are about. */
  readonly tell: () => Tell;
  /** The command's own: what it makes twice is computed once. */
  readonly pipeline: Pipeline;
}

/** What a verb has to say. The face writes `json` with `--json`, else `text`, and the findings as messages. */
export interface Answer {
  readonly json: unknown;
  readonly text: (tell: Tell) => string;
  /** How the person likes lengths shown, where it is about one; both units otherwise. */
  readonly show?: Body['show'] | undefined;
  /** Whose body it is about, where it is about one. */
  readonly wearer?: Body['wearer'] | undefined;
  /** Exit 1 when one of them is an error. */
  readonly findings: readonly Finding[];
}

export interface Verb {
  readonly name: string;
  /** After `pintrue`, one form a line. */
  readonly usage: readonly string[];
  readonly about: Phrase;
  readonly options: OptionConfig;
  /** What each option does, by name, for `help VERB`. */
  readonly explain: Readonly<Record<string, Phrase>>;
  readonly run: (call: Call) => Promise<Answer>;
}

/** A command line that can't be understood. Exit 2, with the verb's usage. */
export class UsageError<C extends keyof typeof USAGE_WORDS = keyof typeof USAGE_WORDS> extends ToldError {
  readonly code: C;

  /** The compiler asks of each code the values that its sentence says. */
  constructor(code: C, ...[values]: Parameters<(typeof USAGE_WORDS)[C]>) {
    const phrase = phraseOf(USAGE_WORDS, code, values as FindingValues | undefined);
    super(renderPhrase(phrase, TELL_BOTH), phrase);
    this.name = 'UsageError';
    this.code = code;
  }
}
