import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { renderPhrase, t, TELL_BOTH, ToldError } from '../garment/index.ts';
import { handWork, type FromHand, type Hand, type ToHand } from '../layout/index.ts';

/** Told to the entry module in a thread that it is a hand. */
const HAND = 'lay-hand';
const ENDED = t`A thread of the search ended early.`;

/**
 * Hands for `layTogether`, each a thread of its own. A thread that cannot start or dies is told through `failed`.
 * @param entry the module that calls `serveHand` when it is not the main thread
 */
export function nodeHands(entry: URL, count: number): Hand[] {
  return Array.from({ length: count }, (): Hand => {
    const worker = new Worker(entry, { workerData: { hand: HAND } });
    return {
      send: (message: ToHand) => worker.postMessage(message),
      hear(heard, failed) {
        worker.on('message', heard);
        worker.on('error', failed);
        worker.on('exit', () => failed(new ToldError(renderPhrase(ENDED, TELL_BOTH), ENDED)));
      },
      close: () => void worker.terminate(),
    };
  });
}

/** The other side: called by the entry module in the thread. True when this was such a thread. */
export function serveHand(): boolean {
  const given = workerData as { hand?: string } | null;
  if (isMainThread || !parentPort || given?.hand !== HAND) return false;
  const port = parentPort;
  const hear = handWork(
    (message: FromHand) => port.postMessage(message),
    () => performance.now(),
    (next) => setImmediate(next),
  );
  port.on('message', (message: ToHand) => hear(message));
  return true;
}
