import { renderPhrase, TELL_BOTH, ToldError, type Phrase } from '../../garment/index.ts';
import { PROGRESS_WORDS, type Doing } from '../words/progress-table.ts';
import { REFUSAL_WORDS as NO, type Counted } from '../words/refusal-table.ts';

/**
 * Readers meet files that are damaged or made to hurt. Each spends from a budget: bytes, lines, points, depth, time.
 * When it is used up the reader stops and says which part was too much; it never hangs.
 */

/** Why a file could not be read; the sentence is the error's own. */
export type ReadProblem =
  | 'empty'
  | 'not-this-format'
  | 'damaged'
  | 'locked'
  | 'no-lines'
  | 'only-images'
  | 'too-large'
  | 'too-deep'
  | 'too-slow'
  | 'cancelled'
  | 'wrong-correction';

/** Thrown at the readers' doors: the file as a whole is of no use, and why. */
export class ReadError extends ToldError {
  readonly code: ReadProblem;
  /** File name. */
  readonly where: string;
  constructor(code: ReadProblem, where: string, phrase: Phrase) {
    super(renderPhrase(phrase, TELL_BOTH), phrase);
    this.name = 'ReadError';
    this.code = code;
    this.where = where;
  }
}

export interface ReadLimits {
  readonly bytes: number;
  readonly pages: number;
  readonly strokes: number;
  readonly points: number;
  /** Nesting of groups, forms and references. */
  readonly depth: number;
  /** Elements or drawing operations looked at, drawn or not. */
  readonly operations: number;
  /** Wall clock, ms. */
  readonly time: number;
}

/** Ample for a 60-page ten-size pattern (some 30,000 strokes), small against the memory of a ten-year-old laptop. */
export const READ_LIMITS: ReadLimits = {
  bytes: 200_000_000,
  pages: 500,
  strokes: 400_000,
  points: 4_000_000,
  depth: 100,
  operations: 4_000_000,
  time: 60_000,
};

export interface ReadOptions {
  /** Shown in messages. */
  readonly name?: string;
  readonly limits?: Partial<ReadLimits>;
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: Progress) => void;
  /** ms; for tests. */
  readonly clock?: () => number;
}

/** `done` of `total` steps of what is being done. */
export interface Progress {
  readonly doing: Phrase;
  readonly done: number;
  readonly total: number;
}

export interface Budget {
  readonly name: string;
  readonly limits: ReadLimits;
  /** Takes `amount` of the kind, or throws `too-large`. Also looks at the clock and the signal now and then. */
  spend(kind: Counted, amount: number): void;
  /** Throws `too-deep` beyond the depth bound. */
  depth(now: number): void;
  /** Throws `cancelled` or `too-slow`. */
  look(): void;
  report(doing: Doing, done: number, total: number): void;
  /** ms left. */
  left(): number;
}

/** Checks the size of the file and opens the budget. Throws `empty` or `too-large`. */
export function openBudget(bytes: number, options: ReadOptions): Budget {
  const limits: ReadLimits = { ...READ_LIMITS, ...options.limits };
  const name = options.name ?? 'the file';
  const clock = options.clock ?? (() => performance.now());
  const start = clock();
  if (bytes === 0) throw new ReadError('empty', name, NO['file-empty']({ file: name }));
  if (bytes > limits.bytes) {
    const weighs = { megabytes: bytes / 1e6, most: limits.bytes / 1e6 };
    throw new ReadError('too-large', name, NO['file-heavy']({ file: name, ...weighs }));
  }
  const spent = { strokes: 0, points: 0, operations: 0, pages: 0 };
  let sinceLook = 0;
  const left = () => limits.time - (clock() - start);
  const look = () => {
    sinceLook = 0;
    if (options.signal?.aborted)
      throw new ReadError('cancelled', name, NO['reading-stopped']({ file: name }));
    if (left() < 0) throw new ReadError('too-slow', name, NO['file-slow']({ file: name }));
  };
  return {
    name,
    limits,
    left,
    look,
    spend(kind, amount) {
      spent[kind] += amount;
      if (!(spent[kind] <= limits[kind])) {
        throw new ReadError(
          'too-large',
          name,
          NO['file-counts']({ file: name, most: limits[kind], counted: kind }),
        );
      }
      sinceLook += amount;
      if (sinceLook > 2000) look();
    },
    depth(now) {
      if (now > limits.depth)
        throw new ReadError('too-deep', name, NO['file-nested']({ file: name, most: limits.depth }));
    },
    report(doing, done, total) {
      options.onProgress?.({ doing: PROGRESS_WORDS[doing], done, total });
    },
  };
}
