import { describe, expect, it } from 'vitest';
import type { FromHand, Hand, ToHand } from './crew.ts';
import { crew, handWork } from './crew.ts';
import type { Lay, LayJob } from '../job/lay-job.ts';
import { layTogether } from '../lay/lay.ts';
import { proveLay } from '../lay/prove-lay.ts';
import type { Kept } from './kept.ts';
import { randomJob } from '../job/random-job.test-case.ts';
import { readyStrip } from './ready-strip.ts';
import { spreadJob } from '../lay/spread.ts';
import type { SavedSearch } from './strip-search.ts';
import { stripSearch } from './strip-search.ts';

/** Hands without threads: the same insides, messages copied as a thread would get them. `dies` is the one whose thread ends at once. */
function hands(count: number, dies = -1): { hands: Hand[]; closed: () => number; sent: ToHand['kind'][] } {
  let closed = 0;
  const sent: ToHand['kind'][] = [];
  return {
    sent,
    closed: () => closed,
    hands: Array.from({ length: count }, (_, k): Hand => {
      let heard: (message: FromHand) => void = () => undefined;
      const tell = handWork(
        (message) => {
          const copy = structuredClone(message);
          queueMicrotask(() => heard(copy));
        },
        () => performance.now(),
        (next) => void setTimeout(next, 0),
      );
      return {
        send(message) {
          sent.push(message.kind);
          if (k !== dies) tell(structuredClone(message));
        },
        hear(listener, failed) {
          heard = listener;
          if (k === dies) setTimeout(() => failed(new Error('the thread died')), 1);
        },
        close: () => void closed++,
      };
    }),
  };
}

async function all(
  job: Parameters<typeof layTogether>[0],
  seconds: number,
  made: readonly Hand[],
  signal?: AbortSignal,
) {
  const lays: Lay[] = [];
  const run = layTogether(job, { seed: 1, seconds, ...(signal ? { signal } : {}) }, made);
  for (;;) {
    const { done, value } = await run.next();
    if (done) return { lays, saved: value };
    lays.push(value);
  }
}

describe('several hands', () => {
  // Enough pieces that the first lay is not the shortest.
  const small = randomJob(4);
  const job: LayJob = {
    ...small,
    fold: 'none',
    width: 420,
    nap: 'two-way',
    pieces: small.pieces.map((p) => ({ ...p, count: p.count * 3 })),
  };
  it('give ever shorter proven lays, the first at once, hand on what they find, and are closed', async () => {
    const made = hands(2);
    const { lays, saved } = await all(job, 3, made.hands);
    expect(lays.length).toBeGreaterThan(1);
    lays.forEach((lay, i) => {
      expect(proveLay(job, lay)).toEqual([]);
      if (i > 0) expect(lay.length).toBeLessThan(lays[i - 1]!.length);
    });
    expect(made.sent).toContain('adopt');
    expect(made.closed()).toBe(2);
    // Continued, the first lay is no longer than the last one was.
    const again = layTogether(job, { seed: 5, seconds: 0.05, from: saved }, hands(2).hands);
    const first = await again.next();
    expect((first.value as Lay).length).toBeLessThanOrEqual(lays.at(-1)!.length + 1e-9);
    await again.return(saved);
  });
  it('stop when told, with all they found', async () => {
    const stop = new AbortController();
    setTimeout(() => stop.abort(), 300);
    const began = performance.now();
    const { lays, saved } = await all(job, 60, hands(2).hands, stop.signal);
    expect(performance.now() - began).toBeLessThan(20_000);
    expect(lays.length).toBeGreaterThan(0);
    expect(saved.best).not.toBeNull();
  });
  it("do without one that dies; the last one's death is told", async () => {
    const { lays } = await all(job, 0.5, hands(2, 0).hands);
    expect(lays.length).toBeGreaterThan(0);
    const alone = crew(spreadJob(job).strip, { seed: 1, seconds: 1, known: null }, hands(1, 0).hands);
    await expect(alone.next()).rejects.toThrow('the thread died');
  });
});

describe('a hand that is offered a shorter arrangement', () => {
  const shapes = [5, 7, 8, 11, 13].map((size, k) => ({
    outline: Float64Array.from([0, 0, size, 1, size + 2, size, k, size + 3]),
    count: 3,
    turns: [{ angle: 0 }, { angle: 180 }],
  }));
  const job = { width: 31, shapes };
  /** What the hand has in the end: it works for `looks` looks, is offered `kept`, and the clock goes on by `asleep` seconds. The clock runs a millisecond at each look. */
  const endsWith = (kept: Kept, looks: number, asleep: number): number => {
    let clock = 0;
    let next: () => void = () => undefined;
    let ended: SavedSearch | null = null;
    let found = Infinity;
    const tell = handWork(
      (message) => {
        if (message.kind === 'ended') ended = message.saved;
        else found = message.kept.length;
      },
      () => ++clock,
      (then) => (next = then),
    );
    tell({ kind: 'begin', job, from: 1, seconds: 100, known: null });
    for (let k = 0; k < looks; k++) next();
    tell({ kind: 'adopt', kept });
    clock += asleep * 1000;
    const before = found;
    next();
    // Late in the time it is only taken for that, not for being stuck: the hand has just grown better by itself.
    if (asleep > 70) expect(found).toBeLessThan(before);
    tell({ kind: 'stop' });
    next();
    return ended!.best!.length;
  };
  const search = stripSearch(readyStrip(job), 2);
  for (let k = 0; k < 4000; k++) search.step(k / 4000);
  const kept = search.best()!;
  it('keeps to its own while that grows better', () =>
    expect(endsWith(kept, 6, 0)).toBeGreaterThan(kept.length));
  it('takes it over when it is stuck', () => expect(endsWith(kept, 40, 20)).toBeLessThanOrEqual(kept.length));
  it('takes it over towards the end', () => expect(endsWith(kept, 2, 75)).toBeLessThanOrEqual(kept.length));
});
