import type { Phrase } from '../../garment/index.ts';
import { asTold, pageError, Stopped, told } from '../words/fault.ts';

/** Typed calls into a worker: each is a word with its wish and number, each answer bears the number. */
export interface Call {
  readonly n: number;
  readonly wish: string;
  readonly with: unknown;
}
export type Answer =
  | { readonly n: number; readonly ok: true; readonly value: unknown }
  | {
      readonly n: number;
      readonly ok: false;
      readonly phrase: Phrase;
      readonly name: string;
    }
  | { readonly n: number; readonly ok: null; readonly progress: unknown };

/** What a worker can do, by name: from nothing or one plain value to another, telling on the way how far it is. */
export type Doings = Record<string, (wish: never, tell: (progress: unknown) => void) => unknown>;

/** What a call brings along: nothing, the wish, or the wish and an ear for what is told on the way. */
type Given<Doing> = Doing extends () => unknown
  ? []
  : Doing extends (wish: infer Wish) => unknown
    ? [given: Wish]
    : Doing extends (wish: infer Wish, tell: infer Tell) => unknown
      ? [given: Wish, tell?: Tell]
      : never;

/** Inside the worker: answers calls with the given doings. An error goes back as its phrase. */
export function answerCalls(doings: Doings): void {
  self.addEventListener('message', (event: MessageEvent<Call>) => {
    const { n, wish, with: given } = event.data;
    const post = (answer: Answer): void => self.postMessage(answer);
    const run = async (): Promise<void> => {
      try {
        const value = await doings[wish]!(given as never, (progress) => post({ n, ok: null, progress }));
        post({ n, ok: true, value });
      } catch (error) {
        post({ n, ok: false, phrase: asTold(error).phrase, name: error instanceof Error ? error.name : '' });
      }
    };
    void run();
  });
}

/** On the page: a worker with its calls under way. `stop` ends it at once; the calls under way fail as `Stopped`. */
export class Caller<D extends Doings> {
  readonly #make: () => Worker;
  readonly #gone: () => void;
  #worker: Worker | null = null;
  #n = 0;
  readonly #open = new Map<
    number,
    { done: (v: unknown) => void; failed: (e: Error) => void; tell?: (p: unknown) => void }
  >();

  /** `gone` is called when the worker was stopped or broke down: whatever it had been told must be told to the next one again. */
  constructor(make: () => Worker, gone: () => void = () => undefined) {
    this.#make = make;
    this.#gone = gone;
  }

  call<W extends keyof D & string>(wish: W, ...said: Given<D[W]>): Promise<Awaited<ReturnType<D[W]>>> {
    this.#worker ??= this.#start();
    const n = ++this.#n;
    const [given, tell] = said as readonly [unknown?, ((progress: unknown) => void)?];
    return new Promise((done, failed) => {
      this.#open.set(n, {
        done: done as (v: unknown) => void,
        failed,
        ...(tell ? { tell } : {}),
      });
      this.#worker!.postMessage({ n, wish, with: given } satisfies Call);
    });
  }

  stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#gone();
    for (const { failed } of this.#open.values()) failed(new Stopped());
    this.#open.clear();
  }

  #start(): Worker {
    const worker = this.#make();
    worker.addEventListener('message', (event: MessageEvent<Answer>) => {
      const answer = event.data;
      const open = this.#open.get(answer.n);
      if (!open) return;
      if (answer.ok === null) {
        open.tell?.(answer.progress);
        return;
      }
      this.#open.delete(answer.n);
      if (answer.ok) open.done(answer.value);
      else {
        const { name, phrase } = answer;
        open.failed(Object.assign(told(phrase), { name }));
      }
    });
    worker.addEventListener('error', (event) => {
      const why = event.message ? asTold(event.message) : pageError('worker-stopped');
      for (const { failed } of this.#open.values()) failed(why);
      this.#open.clear();
      this.#worker = null;
      this.#gone();
    });
    return worker;
  }
}
