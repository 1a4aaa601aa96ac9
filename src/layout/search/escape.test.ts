import { describe, expect, it } from 'vitest';
import type { Disturbed } from './disturbed.ts';
import { escapes, NO_ESCAPES } from './escape.ts';
import * as gentle from './gentle-escape.ts';
import { seeded } from './random.ts';
import { readyStrip } from './ready-strip.ts';
import { separation } from './separation.ts';
import * as wild from './wild-escape.ts';

const box = (long: number, high: number): Float64Array =>
  Float64Array.from([0, 0, long, 0, long, high, 0, high]);

const turns = [{ angle: 0 }, { angle: 90 }];
/** Twelve pieces of three sizes on a strip 20 wide, the first of them pinned. */
const strip = readyStrip({
  width: 20,
  shapes: [
    { outline: box(8, 6), count: 1, turns, pinned: { x: 3, y: 4 } },
    { outline: box(8, 6), count: 3, turns },
    { outline: box(4, 3), count: 4, turns },
    { outline: box(7, 5), count: 4, turns },
  ],
});

/** Them at random on a length of 60. */
function layout(seed: number): Disturbed {
  const sep = separation(strip, seeded(seed).state());
  sep.start(60);
  const free = strip.itemShape.map((_, i) => i).filter((i) => !strip.pinned[i]);
  sep.places.x[0] = 3;
  sep.places.y[0] = 4;
  for (const i of free) sep.scatter(i);
  return { strip, sep, random: sep.random, free };
}

const WAYS = Object.entries({ ...gentle, ...wild });

describe.each(WAYS)('the way out %s', (_, way) => {
  it('moves something, leaves what is pinned, and keeps all on the strip', () => {
    let moved = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const at = layout(seed);
      const { sep } = at;
      const before = [...sep.places.x, ...sep.places.y, ...sep.places.form];
      way(at);
      if (before.some((v, k) => v !== [...sep.places.x, ...sep.places.y, ...sep.places.form][k])) moved++;
      expect([sep.places.x[0], sep.places.y[0]]).toEqual([3, 4]);
      for (const i of at.free) {
        const form = strip.forms[sep.places.form[i]!]!;
        expect(strip.itemForms[i]).toContain(sep.places.form[i]);
        expect(sep.places.x[i]! + form.box[0]).toBeGreaterThanOrEqual(-1e-9);
        expect(sep.places.x[i]! + form.box[2]).toBeLessThanOrEqual(60 + 1e-9);
        expect(sep.places.y[i]! + form.box[1]).toBeGreaterThanOrEqual(-1e-9);
        expect(sep.places.y[i]! + form.box[3]).toBeLessThanOrEqual(20 + 1e-5);
      }
    }
    expect(moved).toBeGreaterThan(20);
  });
});

describe('the choice of a way out', () => {
  it('falls on the one that won more often than on one that took long for nothing', () => {
    const { sep } = layout(1);
    const won = NO_ESCAPES.won.map((_, k) => (k === 3 ? 5 : 0));
    const spent = NO_ESCAPES.spent.map((_, k) => (k === 3 ? 2000 : 8000));
    const random = seeded(2);
    const taken = new Map<number, number>();
    for (let k = 0; k < 400; k++) {
      const choice = escapes(strip, sep, random, { won, spent, open: -1 });
      choice.take();
      const { open } = choice.save();
      taken.set(open, (taken.get(open) ?? 0) + 1);
    }
    // By the rates: 5.5 / 3000 against 0.5 / 9000 for each of the others, so three in four and more.
    expect(taken.get(3)! / 400).toBeGreaterThan(0.6);
    expect(taken.size).toBeGreaterThan(6);
  });

  it('counts what came of a way once', () => {
    const { sep } = layout(1);
    const choice = escapes(strip, sep, seeded(3), NO_ESCAPES);
    choice.take();
    const { open } = choice.save();
    choice.tell(true, 120);
    choice.tell(true, 500);
    const { won, spent, open: none } = choice.save();
    expect(none).toBe(-1);
    expect(won[open]).toBe(1);
    expect(spent[open]).toBe(120);
  });
});
