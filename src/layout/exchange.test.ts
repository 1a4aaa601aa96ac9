import { describe, expect, it } from 'vitest';
import { readyStrip } from './ready-strip.ts';
import { seeded } from './random.ts';
import type { Separation } from './separation.ts';
import { separation } from './separation.ts';

const bar = (high: number): Float64Array => Float64Array.from([0, 0, 10, 0, 10, high, 0, high]);

/**
 * Worked by hand: a pinned bar leaves a room of 20.5 under it and one of 24.5 above it on a width of 100. The bar of 24 lies below, 3.5 into the
 * pinned one, the bar of `short` above.
 */
function wrongWayRound(short: number): Separation {
  const turns = [{ angle: 0 }];
  const strip = readyStrip({
    width: 100,
    shapes: [
      { outline: bar(55), count: 1, turns, pinned: { x: 0, y: 20.5 } },
      { outline: bar(24), count: 1, turns },
      { outline: bar(short), count: 1, turns },
    ],
  });
  const sep = separation(strip, seeded(3));
  sep.places.y.set([20.5, 0, 75.55]);
  sep.places.form.set([0, 1, 2].map((i) => strip.itemForms[i]![0]!));
  sep.start(10);
  return sep;
}

describe('two pieces exchanged in a sweep', () => {
  it('lie right at once where one after the other would have to lie on each other first', () => {
    const sep = wrongWayRound(20);
    expect(sep.total()).toBeGreaterThan(0);
    // One in three draws picks the other piece.
    for (let k = 0; k < 20 && sep.total() > 0; k++) sep.sweep();
    expect(sep.total()).toBe(0);
    expect(sep.places.y[1]).toBeGreaterThan(75.5);
    expect(sep.places.y[2]).toBeLessThan(0.5);
  });
  it('stay where they are when that is no better: weights and places as before', () => {
    // Exchanged, the higher one would lie 3.9 into the pinned bar.
    const sep = wrongWayRound(24.4);
    const before = [...sep.places.y];
    const weights = [...sep.weights];
    for (let k = 0; k < 20; k++) sep.sweep();
    expect(sep.total()).toBeGreaterThan(0);
    expect([...sep.weights]).toEqual(weights);
    expect([...sep.places.y]).toEqual(before);
  });
});
