import { describe, expect, it } from 'vitest';
import { Latest } from './latest.ts';

describe('the newest job wins', () => {
  it('runs the first and the last of a burst, and leaves the ones between', async () => {
    const ran: number[] = [];
    const answers: number[] = [];
    const latest = new Latest<number, number>(async (n) => {
      ran.push(n);
      await new Promise((r) => setTimeout(r, 5));
      return n * 10;
    });
    await new Promise<void>((finished, failed) => {
      for (const n of [1, 2, 3, 4]) {
        latest.ask(n, (a) => (answers.push(a), a === 40 && finished()), failed);
      }
    });
    expect(ran).toEqual([1, 4]);
    expect(answers).toEqual([10, 40]);
  });

  it('goes on after a failure, and tells who asked', async () => {
    const latest = new Latest<number, number>((n) =>
      n === 1 ? Promise.reject(new Error('no')) : Promise.resolve(n),
    );
    const said = await new Promise<string>((r) =>
      latest.ask(
        1,
        () => r('done'),
        (e) => r(e.message),
      ),
    );
    const then = await new Promise<number>((r) => latest.ask(2, r, () => r(-1)));
    expect([said, then]).toEqual(['no', 2]);
  });
});
