import { asTold, pageError } from '../words/fault.ts';
import type { FromHand, Hand, ToHand } from '../../layout/index.ts';

/** More than this share one memory too slowly to pay. */
const MOST_HANDS = 4;

/** Workers that have ended their search, warm for the next. */
const idle: Worker[] = [];

/** Hands for one search, each a worker on a core of its own. */
export const browserHands = (): Hand[] =>
  Array.from({ length: Math.max(1, Math.min(MOST_HANDS, navigator.hardwareConcurrency)) }, workerHand);

function workerHand(): Hand {
  const worker =
    idle.pop() ??
    new Worker(new URL('./lay-hand-worker.ts', import.meta.url), { type: 'module', name: 'lay-hand' });
  let ended = false;
  return {
    send: (message: ToHand) => worker.postMessage(message),
    hear(heard, failed) {
      worker.onmessage = (event: MessageEvent<FromHand>) => {
        ended ||= event.data.kind === 'ended';
        heard(event.data);
      };
      worker.onerror = (event) => failed(event.message ? asTold(event.message) : pageError('worker-stopped'));
    },
    close() {
      if (ended) idle.push(worker);
      else worker.terminate();
    },
  };
}
