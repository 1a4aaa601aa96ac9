import { describe, expect, it } from 'vitest';
import { ToldError } from '../../garment/index.ts';
import { asTold, Stopped, tellTrouble } from '../words/fault.ts';
import { Caller, type Answer, type Call } from './call.ts';

const doings = {
  open: () => 'opened',
  count: ({ to }: { to: number }, tell: (share: number) => void): number => {
    for (let i = 1; i <= to; i++) tell(i / to);
    return to;
  },
  refuse: (why: string): never => {
    throw new RangeError(why);
  },
};

/** Stands for a worker: answers in the same thread, a turn later, as `answerCalls` does. */
class Beside extends EventTarget {
  ended = false;
  terminate(): void {
    this.ended = true;
  }
  postMessage({ n, wish, with: given }: Call): void {
    const say = (data: Answer): void => {
      if (!this.ended) this.dispatchEvent(new MessageEvent('message', { data }));
    };
    void Promise.resolve().then(() => {
      try {
        const doing = doings[wish as keyof typeof doings] as (g: unknown, t: (p: unknown) => void) => unknown;
        say({ n, ok: true, value: doing(given, (progress) => say({ n, ok: null, progress })) });
      } catch (error) {
        say({ n, ok: false, phrase: asTold(error).phrase, name: (error as Error).name });
      }
    });
  }
}
const caller = (): Caller<typeof doings> => new Caller(() => new Beside() as unknown as Worker);

describe('a call into a worker', () => {
  it('needs nothing where nothing is wished, and is answered', async () => {
    expect(await caller().call('open')).toBe('opened');
  });

  it('hears how far it is before the answer', async () => {
    const heard: number[] = [];
    expect(await caller().call('count', { to: 4 }, (share) => heard.push(share))).toBe(4);
    expect(heard).toEqual([0.25, 0.5, 0.75, 1]);
  });

  it('gives the worker’s error with its name, in a sentence that can be translated', async () => {
    const thrown: unknown = await caller()
      .call('refuse', 'too far')
      .catch((error: unknown) => error);
    expect(thrown).toBeInstanceOf(ToldError);
    expect(thrown).toMatchObject({ name: 'RangeError', message: expect.stringContaining('too far') });
    const letters = (words: string): string => words.replace(/\p{L}/gu, '*');
    // What nobody foresaw is only quoted.
    expect(tellTrouble(thrown, { unit: 'cm', letters }).match(/\p{L}+/gu)).toEqual(['too', 'far']);
  });

  it('answers each call for itself, several at once', async () => {
    const one = caller();
    expect(await Promise.all([one.call('count', { to: 2 }), one.call('open')])).toEqual([2, 'opened']);
  });

  it('that is stopped fails with that word, and the next one starts a worker of its own', async () => {
    const one = caller();
    const open = one.call('count', { to: 3 });
    one.stop();
    await expect(open).rejects.toBeInstanceOf(Stopped);
    expect(await one.call('open')).toBe('opened');
  });

  it('into a worker that breaks down fails, and says that what it was told is gone', async () => {
    const workers: Beside[] = [];
    let gone = 0;
    const one = new Caller<typeof doings>(
      () => workers[workers.push(new Beside()) - 1] as unknown as Worker,
      () => gone++,
    );
    const open = one.call('open');
    workers[0]!.dispatchEvent(new Event('error'));
    await expect(open).rejects.toThrow('The worker stopped.');
    expect(gone).toBe(1);
    expect(await one.call('open')).toBe('opened');
    expect(workers).toHaveLength(2);
  });

  it('cannot be said wrongly: types hold', () => {
    const one = caller();
    // @ts-expect-error a wish that is missing
    const missing = (): unknown => one.call('count');
    // @ts-expect-error one that is not wanted
    const besides = (): unknown => one.call('open', 1);
    // @ts-expect-error progress of another kind
    const other = (): unknown => one.call('count', { to: 1 }, (share: string) => share);
    expect([missing, besides, other]).toHaveLength(3);
  });
});
