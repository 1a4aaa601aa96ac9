import { describe, expect, it } from 'vitest';
import { exchanger } from './exchange.ts';
import { NO_HOLLOWS, placer } from './placer.ts';
import { readyStrip } from './ready-strip.ts';
import { seeded } from './random.ts';
import type { Separation } from './separation.ts';
import { separation } from './separation.ts';

const bar = (high: number): Float64Array => Float64Array.from([0, 0, 10, 0, 10, high, 0, high]);

/**
 * Worked by hand: on a width of 100 a pinned bar leaves a room of 20.5 under it and one of `above` over it. A bar of 24 lies in the lower room, so
 * 3.5 into the pinned one, a bar of `other` in the upper.
 */
function inTwoRooms(above: number, other: number): Separation {
  const turns = [{ angle: 0 }];
  const strip = readyStrip({
    width: 100,
    shapes: [
      { outline: bar(79.5 - above), count: 1, turns, pinned: { x: 0, y: 20.5 } },
      { outline: bar(24), count: 1, turns },
      { outline: bar(other), count: 1, turns },
    ],
  });
  const sep = separation(strip, seeded(3).state());
  sep.places.y.set([20.5, 0, 100 - other]);
  sep.places.form.set([0, 1, 2].map((i) => strip.itemForms[i]![0]!));
  sep.start(10);
  return sep;
}

/** One in three draws picks the other piece. */
const SWEEPS = 20;

describe('a piece that has just found a better place', () => {
  /** How often it looks beside another in 200 tries; a try that picks itself is none. */
  const looks = (partners: number, stuck: boolean): number => {
    const turns = [{ angle: 0 }];
    const strip = readyStrip({
      width: 100,
      shapes: [
        { outline: bar(20), count: 1, turns },
        { outline: bar(21), count: partners, turns },
      ],
    });
    let looked = 0;
    const random = seeded(1);
    const move = {
      ...placer(strip, random.state(), 1e-9, NO_HOLLOWS),
      seekBeside: () => {
        looked++;
        return false;
      },
    };
    const jam = {
      depth: new Float64Array((partners + 1) ** 2),
      costOf: () => 1,
      refreshItem: () => undefined,
    };
    const exchange = exchanger(strip, move, jam);
    for (let k = 0; k < 200; k++) exchange(0, stuck);
    return looked;
  };
  it('tries to exchange where it has two dozen to do it with, else only when stuck', () => {
    expect(looks(23, false)).toBe(0);
    expect(looks(24, false)).toBeGreaterThan(150);
    expect(looks(23, true)).toBeGreaterThan(150);
    expect(looks(1, true)).toBeGreaterThan(50);
  });
});

describe('two pieces exchanged in a sweep', () => {
  it('lie right at once where one after the other would have to lie on each other first', () => {
    const sep = inTwoRooms(24.5, 20);
    expect(sep.total()).toBeGreaterThan(0);
    for (let k = 0; k < SWEEPS && sep.total() > 0; k++) sep.sweep();
    expect(sep.total()).toBe(0);
    expect(sep.places.y[1]).toBeGreaterThan(75.5);
    expect(sep.places.y[2]).toBeLessThan(0.5);
  });
  it('stay where they are when both together are no better: weights and places as before', () => {
    // 3.5 and 2.4 too high; exchanged 2 and 3.9, and the longer bar weighs a little more.
    const sep = inTwoRooms(22, 24.4);
    const inHundredths = (): number[] => [...sep.places.y].map((y) => Math.round(y * 100) / 100);
    const before = inHundredths();
    const weights = [...sep.weights];
    for (let k = 0; k < SWEEPS; k++) {
      sep.sweep();
      expect(inHundredths()).toEqual(before);
    }
    expect(sep.total()).toBeGreaterThan(0);
    expect([...sep.weights]).toEqual(weights);
  });
  it('are both measured anew', () => {
    // 3.5 too high; exchanged 2 and 0.5.
    const sep = inTwoRooms(22, 21);
    const before = sep.total();
    for (let k = 0; k < SWEEPS; k++) sep.sweep();
    const told = sep.total();
    expect(told).toBeLessThan(before);
    sep.refresh();
    expect(told).toBeCloseTo(sep.total(), 9);
    expect(told / before).toBeCloseTo(2.5 / 3.5, 1);
  });
  it('count what they overlap each other once', () => {
    // Worked by hand: their slants lie along each other, 37 high on a width of 36.5; the other way round they are 37.3, so 0.8 too high and not 0.5.
    const turns = [{ angle: 0 }];
    const strip = readyStrip({
      width: 36.5,
      shapes: [
        { outline: Float64Array.from([0, 0, 10, 0, 10, 20, 0, 20.3]), count: 1, turns },
        { outline: Float64Array.from([0, 0.3, 10, 0, 10, 17, 0, 17]), count: 1, turns },
      ],
    });
    const sep = separation(strip, seeded(3).state());
    sep.places.y.set([0, 19.5]);
    sep.places.form.set([0, 1].map((i) => strip.itemForms[i]![0]!));
    sep.start(10);
    const before = sep.total();
    for (let k = 0; k < SWEEPS; k++) {
      sep.sweep();
      expect(sep.places.y[0]).toBeLessThan(sep.places.y[1]!);
      expect(sep.total()).toBeCloseTo(before, 4);
    }
  });
});
