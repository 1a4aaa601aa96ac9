import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import {
  DxfError,
  READ_LIMITS,
  ReadError,
  readFile,
  REFUSAL_WORDS,
  type Proposal,
} from '../exchange/index.ts';
import type { Phrase } from '../garment/index.ts';

/** What is read, by whom it is asked. */
export interface ReadJob {
  readonly bytes: Uint8Array;
  readonly name: string;
  readonly scaleBy?: string;
}

/** A thrown thing does not keep its kind on the way between threads. */
type Told =
  | { readonly kind: 'read'; readonly proposal: Proposal }
  | {
      readonly kind: 'refused';
      readonly code: ReadError['code'];
      readonly where: string;
      readonly phrase: Phrase;
    }
  | { readonly kind: 'dxf'; readonly line: number; readonly what: Phrase };

/** A file made to hurt may fill this and no more, MB. */
const MOST_MB = 900;
/** After the reader's own bound, for a step of a library that cannot be interrupted, ms. */
const GRACE_MS = 1500;
/** How often the time used is looked at, ms. */
const LOOK_MS = 100;
/** On a machine busy with other work the clock may run this much faster than the reader. */
const BUSY = 8;

/** Small files get little time: what a damaged font in one makes the PDF library do cannot be interrupted, only ended. Bytes to ms of processor. */
const timeFor = (bytes: number): number => Math.min(READ_LIMITS.time, 8_000 + (20_000 * bytes) / 1e6);

/** Reads a file here and now. */
export async function readHere({ bytes, name, scaleBy }: ReadJob): Promise<Proposal> {
  return readFile(bytes, name, scaleBy === undefined ? {} : { scaleBy });
}

/**
 * Reads a file in a thread of its own that is ended when its time or memory is used up or something in it breaks: a damaged file never takes
 * the program with it. `time`: ms of this process's processor time. `entry`: the module that calls `serveReading` when it is not the main thread. Throws as `readFile` of exchange does.
 */
export function readApart(
  entry: URL,
  job: ReadJob,
  { time = timeFor(job.bytes.length), megabytes = MOST_MB } = {},
): Promise<Proposal> {
  const { name } = job;
  return new Promise((resolve, reject) => {
    const worker = new Worker(entry, {
      workerData: { job },
      resourceLimits: { maxOldGenerationSizeMb: megabytes },
    });
    const end = (settle: () => void): void => {
      clearInterval(timer);
      settle();
      void worker.terminate();
    };
    const [start, used] = [performance.now(), process.cpuUsage()];
    const timer = setInterval(() => {
      const { user, system } = process.cpuUsage(used);
      const spent = Math.max((user + system) / 1000, (performance.now() - start) / BUSY);
      if (spent > time + GRACE_MS)
        end(() => reject(new ReadError('too-slow', name, REFUSAL_WORDS['file-slow']({ file: name }))));
    }, LOOK_MS);
    worker.on('message', (told: Told) =>
      end(() => {
        if (told.kind === 'read') resolve(told.proposal);
        else if (told.kind === 'dxf') reject(new DxfError(told.what, told.line));
        else reject(new ReadError(told.code, told.where, told.phrase));
      }),
    );
    worker.on('error', (error: NodeJS.ErrnoException) =>
      end(() =>
        reject(
          error.code === 'ERR_WORKER_OUT_OF_MEMORY'
            ? new ReadError('too-large', name, REFUSAL_WORDS['file-memory']({ file: name, megabytes }))
            : new ReadError('damaged', name, REFUSAL_WORDS['file-broken']({ file: name })),
        ),
      ),
    );
  });
}

/** The other side: called by the entry module in the thread. True when this was such a thread. */
export function serveReading(): boolean {
  const given = workerData as { job?: ReadJob } | null;
  if (isMainThread || !parentPort || !given?.job) return false;
  const port = parentPort;
  // The PDF library may leave a failed step that nobody waits for; what matters comes through the reading itself.
  process.on('unhandledRejection', () => undefined);
  readHere(given.job).then(
    (proposal) => port.postMessage({ kind: 'read', proposal } satisfies Told),
    (error: unknown) => {
      if (error instanceof ReadError)
        port.postMessage({
          kind: 'refused',
          code: error.code,
          where: error.where,
          phrase: error.phrase,
        } satisfies Told);
      else if (error instanceof DxfError)
        port.postMessage({ kind: 'dxf', line: error.line, what: error.what } satisfies Told);
      else throw error;
    },
  );
  return true;
}
