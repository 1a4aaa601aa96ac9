import { searchEnded } from '../words/words-table.ts';
import type { Kept } from './kept.ts';
import { plainKept } from './kept.ts';
import type { SavedSearch } from './strip-search.ts';
import type { StripRun } from './strip-run.ts';
import { startStrip } from './strip-run.ts';
import type { StripJob } from './strip.ts';

/** What a hand is told. */
export type ToHand =
  | {
      readonly kind: 'begin';
      readonly job: StripJob;
      readonly from: number | SavedSearch;
      readonly seconds: number;
      /** What was found before, to go on from. */
      readonly known: Kept | null;
    }
  | { readonly kind: 'adopt'; readonly kept: Kept }
  | { readonly kind: 'stop' };

/** What a hand tells. */
export type FromHand =
  { readonly kind: 'found'; readonly kept: Kept } | { readonly kind: 'ended'; readonly saved: SavedSearch };

/** One thread that searches, seen from outside: a worker of any host. */
export interface Hand {
  readonly send: (message: ToHand) => void;
  /** Called once; `failed` when the thread died. */
  readonly hear: (heard: (message: FromHand) => void, failed: (reason: Error) => void) => void;
  readonly close: () => void;
}

/** A hand looks up from its work so often, ms: what others found reaches it soon, and the looking up costs nothing to speak of. */
const SLICE_MS = 60;
/** However long the preparing took, this share of the time is left to search in. */
const LEAST_SEARCH = 0.5;
/**
 * A hand goes on from what another found once it has not bettered its own for `STUCK` of the time, or when `ALONE` of it is over. Until then each
 * has an arrangement of its own: hands that take over every find are stuck in one and the same (shirts: no better than one hand).
 */
const STUCK = 0.12;
const ALONE = 0.7;
/** Seeds of the hands lie apart by this (a prime): a run with the next seed does not repeat the other hand's. */
const SEED_STEP = 7919;

/**
 * The inside of a hand: give it what it is told. Works in slices and lets the host's messages in between them.
 * @param later runs a function when the messages that wait have been heard (setImmediate, setTimeout).
 */
export function handWork(
  send: (message: FromHand) => void,
  now: () => number,
  later: (next: () => void) => void,
): (message: ToHand) => void {
  let run: StripRun | null = null;
  let seconds = 0;
  let began = 0;
  let told = Infinity;
  let stopped = false;
  /** The shortest that another hand found and this one has not taken over. */
  let offered: Kept | null = null;
  /** Share of the time at which this hand last grew better. */
  let bettered = 0;
  const slice = (): void => {
    if (!run) return;
    const share = Math.min(1, (now() - began) / (seconds * 1000));
    if (stopped || run.done() || (share >= 1 && run.ready())) {
      send({ kind: 'ended', saved: run.save() });
      run = null;
      return;
    }
    const until = now() + SLICE_MS;
    do {
      const preparing = !run.ready();
      run.step(share);
      if (preparing && run.ready()) began = Math.max(began, now() - (1 - LEAST_SEARCH) * seconds * 1000);
    } while (now() < until && !run.done());
    const kept = run.found();
    if (kept && kept.length < told) {
      told = kept.length;
      bettered = share;
      send({ kind: 'found', kept });
    }
    if (offered && (share > ALONE || share - bettered > STUCK)) {
      // What came from another hand is not told again.
      told = Math.min(told, offered.length);
      bettered = share;
      run.adopt(offered);
      offered = null;
    }
    later(slice);
  };
  return (message) => {
    if (message.kind === 'stop') stopped = true;
    else if (message.kind === 'adopt') {
      offered = message.kept;
    } else {
      run = startStrip(message.job, message.from, message.known);
      seconds = message.seconds;
      began = now();
      told = message.known?.length ?? Infinity;
      stopped = false;
      offered = null;
      bettered = 0;
      later(slice);
    }
  };
}

export interface CrewOptions {
  readonly seed: number;
  readonly seconds: number;
  readonly from?: SavedSearch;
  /** The shortest arrangement there is so far, that of `from` too; all hands go on from it. */
  readonly known: Kept | null;
  /** Stops all hands; what was found stays. */
  readonly signal?: AbortSignal;
}

/**
 * Searches one strip with several hands at once: each works with a seed of its own, and what one finds the others go on from.
 * Yields each shorter arrangement; returns the search to continue from. Closes the hands. With one hand it is the search of one thread.
 * A hand that dies is done without; the last one's death is thrown.
 */
export async function* crew(
  job: StripJob,
  options: CrewOptions,
  hands: readonly Hand[],
): AsyncGenerator<Kept, SavedSearch, void> {
  let best: Kept | null = null;
  let fresh: Kept | null = null;
  let saved: SavedSearch | null = null;
  let fault: Error | null = null;
  const working = new Set(hands);
  let wake: () => void = () => undefined;
  const stop = (): void => working.forEach((h) => h.send({ kind: 'stop' }));
  const left = (hand: Hand): void => {
    working.delete(hand);
    wake();
  };
  hands.forEach((hand, k) => {
    hand.hear(
      (message) => {
        if (message.kind === 'ended') {
          if (!saved || shorter(message.saved, saved)) saved = message.saved;
          // One that ends before its time has found what nothing is shorter than.
          stop();
          left(hand);
          return;
        }
        if (best && message.kept.length >= best.length) return;
        best = fresh = message.kept;
        working.forEach((h) => h !== hand && h.send({ kind: 'adopt', kept: message.kept }));
        wake();
      },
      (reason) => {
        fault = reason;
        left(hand);
      },
    );
    const from = k === 0 && options.from ? options.from : options.seed + k * SEED_STEP;
    hand.send({ kind: 'begin', job, from, seconds: options.seconds, known: options.known });
  });
  options.signal?.addEventListener('abort', stop, { once: true });
  if (options.signal?.aborted) stop();
  try {
    while (working.size > 0 || fresh) {
      if (!fresh) await new Promise<void>((go) => (wake = go));
      const found: Kept | null = fresh;
      fresh = null;
      if (found) yield found;
    }
  } finally {
    options.signal?.removeEventListener('abort', stop);
    hands.forEach((h) => h.close());
  }
  if (!saved) throw fault ?? searchEnded();
  return best ? { ...(saved as SavedSearch), best: plainKept(best) } : saved;
}

const shorter = (a: SavedSearch, b: SavedSearch): boolean =>
  (a.best?.length ?? Infinity) < (b.best?.length ?? Infinity);
