import { describe, expect, it } from 'vitest';
import { seeded } from './random.ts';
import { readyStrip } from './ready-strip.ts';
import { separation } from './separation.ts';
import { stripSearch } from './strip-search.ts';
import type { StripJob } from './strip.ts';

const rectangle = (long: number, high: number): Float64Array =>
  Float64Array.from([0, 0, long, 0, long, high, 0, high]);

function reached(job: StripJob, sweeps: number, from = 1): number {
  const search = stripSearch(readyStrip(job), from);
  for (let k = 0; k < sweeps && !search.done(); k++) search.step(k / sweeps);
  return search.best()!.length;
}

describe('the search of a strip', () => {
  // Worked by hand: 21 + 22 + 22 + 39 = 104: no room is left over, and none is missing.
  it('finds room for pieces that fill the width exactly', () => {
    const heights = [21, 22, 22, 39];
    const shapes = heights.map((high) => ({
      outline: rectangle(10, high),
      count: 1,
      turns: [{ angle: 0 }],
    }));
    const strip = readyStrip({ width: 104, shapes });
    const sep = separation(strip, seeded(1).state());
    let top = 0;
    heights.forEach((high, i) => {
      sep.places.y[i] = top + (i % 2 ? 0.3 : -0.3);
      sep.places.form[i] = strip.itemForms[i]![0]!;
      top += high;
    });
    sep.start(10);
    expect(sep.total()).toBeGreaterThan(0);
    for (let k = 0; k < 50 && sep.total() > 0; k++) {
      sep.sweep();
      sep.reweigh();
    }
    expect(sep.total()).toBe(0);
    expect([...sep.places.y].map((y) => Math.round(y * 1e4) / 1e4)).toEqual([0, 21, 43, 65]);
  });

  // Worked by hand: two right triangles of 30 × 40 make a rectangle, one turned by half; three such pairs on a width of 40 need 90.
  it('turns pieces into each other', () => {
    const outline = Float64Array.from([0, 0, 30, 0, 0, 40]);
    const shapes = [{ outline, count: 6, turns: [{ angle: 0 }, { angle: 180 }] }];
    expect(reached({ width: 40, shapes }, 3000)).toBeCloseTo(90, 3);
  });

  it('goes on from where it was saved as if it had not been', () => {
    const shapes = [5, 7, 8, 11, 13].map((size, k) => ({
      outline: Float64Array.from([0, 0, size, 1, size + 2, size, k, size + 3]),
      count: 3,
      turns: [{ angle: 0 }, { angle: 180 }],
    }));
    const strip = readyStrip({ width: 31, shapes });
    const whole = stripSearch(strip, 5);
    const begun = stripSearch(strip, 5);
    for (let k = 0; k < 2000; k++) begun.step(k / 4000);
    // Ways out were tried by then: what they won and cost is saved too.
    expect(Math.max(...begun.save().escapes.spent)).toBeGreaterThan(0);
    const saved: unknown = JSON.parse(
      JSON.stringify(begun.save(), (_, v: unknown) => (v === Infinity ? 1e308 : v)),
    );
    const later = stripSearch(strip, saved as ReturnType<typeof begun.save>);
    for (let k = 0; k < 4000; k++) whole.step(k / 4000);
    for (let k = 2000; k < 4000; k++) later.step(k / 4000);
    expect(later.best()!.length).toBe(whole.best()!.length);
    expect([...later.best()!.places.x]).toEqual([...whole.best()!.places.x]);
    expect(later.save().escapes).toEqual(whole.save().escapes);
    expect(later.save().hollows).toEqual(whole.save().hollows);
    expect(whole.save().hollows.places.some((of) => of.length > 0)).toBe(true);
  });
});
