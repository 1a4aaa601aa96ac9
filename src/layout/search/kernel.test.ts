import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { KERNEL_FILE, kernelFile } from '../../../scripts/kernel.mjs';
import type { KernelMemory } from './kernel-memory.ts';
import { kernelMemory } from './kernel-memory.ts';
import type { Found } from './placer.ts';
import { EFFORT, NO_HOLLOWS, placer } from './placer.ts';
import { seeded } from './random.ts';
import { readyStrip } from './ready-strip.ts';
import type { Strip, Turn } from './strip.ts';

const TURNS = [{ angle: 0 }, { angle: 180 }];
const LENGTH = 90;

/** Three shapes, one of them hollow, `each` times. */
const threeShapes = (each: number): Strip =>
  readyStrip({
    width: 60,
    shapes: [
      [0, 0, 9, 0, 9, 4, 3, 4, 3, 11, 0, 11],
      [0, 0, 7, 1, 8, 9, 2, 6],
      [0, 0, 5, 0, 2, 8],
    ].map((outline) => ({ outline: Float64Array.from(outline), count: each, turns: TURNS })),
  });

/** All items at random, each pair with a weight of its own. */
function scattered(strip: Strip, seed: number): KernelMemory {
  const memory = kernelMemory(strip, 0);
  const random = seeded(seed);
  const n = strip.itemShape.length;
  for (let i = 0; i < n; i++) {
    memory.placeForm[i] = strip.itemForms[i]![random.below(2)]!;
    memory.placeX[i] = 5 + (LENGTH - 20) * random.next();
    memory.placeY[i] = 5 + 40 * random.next();
    for (let j = 0; j < i; j++) memory.weights[i * n + j] = memory.weights[j * n + i] = 1 + random.next();
  }
  memory.calls.setLength(LENGTH);
  memory.calls.allMoved();
  return memory;
}

describe('the kernel', () => {
  it('is made of its sources as they stand', async () => {
    expect(readFileSync(KERNEL_FILE, 'utf8')).toBe(await kernelFile());
  });
});

/** As many pieces as bits in one word hold, in two, and more. */
describe.each([2, 21, 22, 43, 50])('measured by tables, one of three times %d pieces', (each) => {
  const strip = threeShapes(each);
  const n = strip.itemShape.length;

  /** By how much depth may differ for pair (i in form f, j), and the two measures at a spot. */
  const spots = (seed: number): { coarse: number; exact: number; may: number }[] => {
    const { calls, placeX, placeY, placeForm, weights } = scattered(strip, seed);
    const random = seeded(seed + 100);
    return Array.from({ length: 60 }, () => {
      const i = random.below(n);
      const f = strip.itemForms[i]![random.below(2)]!;
      expect(calls.gather(i, f)).toBe(1);
      const { box, low, high } = strip.forms[f]!;
      const x = -box[0] + (LENGTH - box[2] + box[0]) * random.next();
      const y = low + (high - low) * random.next();
      let may = 0;
      for (let j = 0; j < n; j++) {
        const k = strip.pairField[placeForm[j]! * strip.forms.length + f]!;
        const { wide, high: tall } = strip.fields;
        if (Math.abs(x - placeX[j]!) > 2 * wide[k]! || Math.abs(y - placeY[j]!) > 2 * tall[k]!) continue;
        may += (weights[i * n + j]! * (wide[k]! + tall[k]!)) / 32 / 2;
      }
      return { coarse: calls.coarse(x, y), exact: calls.exact(x, y, Infinity), may };
    });
  };

  it('lies as deep as by exact edges, to what a table of a depth must err', () => {
    // Depth is nowhere steeper than one, so between the corners of a cell it differs from theirs by half the cell's sides at most.
    let met = 0;
    for (const { coarse, exact, may } of spots(1)) {
      expect(Math.abs(coarse - exact)).toBeLessThanOrEqual(may);
      met += exact;
      expect(coarse).toBeGreaterThanOrEqual(0);
    }
    expect(met).toBeGreaterThan(0);
  });

  it('lies as deep on average to two parts in a hundred', () => {
    const all = spots(2);
    const sum = (of: (spot: (typeof all)[number]) => number): number =>
      all.reduce((s, spot) => s + of(spot), 0);
    expect(sum((s) => Math.abs(s.coarse - s.exact))).toBeLessThan(0.02 * sum((s) => s.exact));
  });
});

describe('tables kept from one move to the next', () => {
  it('find the same places as tables made anew for each', () => {
    const strip = threeShapes(12);
    const n = strip.itemShape.length;
    const kept = placer(strip, seeded(7).state(), 1e-9, NO_HOLLOWS);
    const anew = placer(strip, seeded(7).state(), 1e-9, NO_HOLLOWS);
    for (const each of [kept, anew]) {
      const from = scattered(strip, 3);
      each.places.x.set(from.placeX);
      each.places.y.set(from.placeY);
      each.places.form.set(from.placeForm);
      each.weights.set(from.weights);
      each.renew(LENGTH);
    }
    const spot: Found = { x: 0, y: 0, form: 0, cost: 0 };
    let moves = 0;
    for (let k = 0; k < 400; k++) {
      const i = (k * 7) % n;
      anew.renew(LENGTH);
      for (const each of [kept, anew]) {
        spot.cost = 3;
        if (!each.seek(i, EFFORT, spot)) continue;
        each.put(i, spot);
        moves++;
      }
      expect([...kept.places.x, ...kept.places.y]).toEqual([...anew.places.x, ...anew.places.y]);
    }
    expect(moves).toBeGreaterThan(400);
  });
});

/** Looks nowhere but where it is told to. */
const NOWHERE = { wide: 0, near: 0, walked: 3 };
const DEAR = 1e9;

describe('a move', () => {
  const square = Float64Array.from([0, 0, 10, 0, 10, 10, 0, 10]);
  /** A square that lies 2 to the right of another's left edge, on a strip of 100 by 10. */
  const two = (turn: Partial<Turn> = {}, hollows = NO_HOLLOWS) => {
    const turns = [{ angle: 0, ...turn }];
    const shapes = [
      { outline: square, count: 1, turns: [{ angle: 0 }], pinned: { x: 40, y: 0 } },
      { outline: square, count: 1, turns },
    ];
    const move = placer(readyStrip({ width: 10, shapes }), seeded(2).state(), 1e-9, hollows);
    move.places.x.set([40, 42]);
    move.places.form.set([0, 1]);
    move.weights.set([0, 1, 1, 0]);
    move.renew(100);
    return move;
  };
  const spot = (): Found => ({ x: -1, y: -1, form: -1, cost: DEAR });

  it('slides off what it lies on, the short way (worked by hand: by 8, and less than a step of 1.6 beyond)', () => {
    const at = spot();
    expect(two().seek(1, NOWHERE, at)).toBe(true);
    expect(at.x).toBeGreaterThan(50);
    expect(at.x).toBeLessThan(51.61);
    expect(at.cost).toBe(0);
  });

  it('goes to a hollow that is known', () => {
    const at = spot();
    const move = two({}, { places: [[], [71, 0]], next: [0, 0] });
    // Further right is as free, but the hollow is measured first.
    expect(move.seek(1, NOWHERE, at)).toBe(true);
    expect(at.x).toBeCloseTo(71, 6);
  });

  it('learns where it came to, but not when it looks beside a place', () => {
    const move = two();
    move.seekBeside(1, 25, 5, spot());
    expect(move.saveHollows().places[1]).toEqual([]);
    move.seek(1, NOWHERE, spot());
    expect(move.saveHollows().places[1]).toHaveLength(2);
  });

  it('stands on its rails only', () => {
    const far = { wide: 20, near: 20, walked: 3 };
    const move = two({ railX: { at: 3, step: 7 }, railY: { at: 0, step: 0 } });
    for (let k = 0; k < 30; k++) {
      const at = spot();
      expect(move.seek(1, far, at)).toBe(true);
      expect((at.x - 3) / 7).toBeCloseTo(Math.round((at.x - 3) / 7), 9);
      expect(at.y).toBe(0);
    }
    const nowhere = two({ railX: { at: 95, step: 0 } });
    expect(nowhere.seek(1, far, spot())).toBe(false);
    const one = two({ railX: { at: 60, step: 0 } });
    const at = spot();
    expect(one.seek(1, far, at)).toBe(true);
    expect(at.x).toBe(60);
  });
});

describe('the hollows of a layout', () => {
  const strip = threeShapes(1);
  const fresh = () => placerWithCalls(strip);

  it('are kept for each form by itself', () => {
    const h = fresh();
    h.remember(1, 10, 20);
    h.remember(1, 20, 20);
    expect(h.known().slice(0, 3)).toEqual([[], [10, 20, 20, 20], []]);
  });

  it('close together are one, which moves to where it was found last', () => {
    // Mean piece size 6.4 (areas 57, 41.5 and 20): a quarter of it is 1.6.
    const h = fresh();
    h.remember(0, 10, 20);
    h.remember(0, 30, 20);
    h.remember(0, 11.5, 18.5);
    expect(h.known()[0]).toEqual([11.5, 18.5, 30, 20]);
    h.remember(0, 11.5, 20.2);
    expect(h.known()[0]).toHaveLength(6);
  });

  it('make room for new ones, the oldest first', () => {
    const h = fresh();
    for (let k = 0; k <= h.held; k++) h.remember(0, 3 * k, 0);
    const left = h.known()[0]!.filter((_, k) => k % 2 === 0);
    expect(left).toHaveLength(h.held);
    expect(left).not.toContain(0);
    expect(left).toContain(3 * h.held);
  });
});

/** The kernel's memory of hollows, seen from outside. */
function placerWithCalls(strip: Strip) {
  const { calls, held, hollowX, hollowY } = kernelMemory(strip, 0);
  hollowX.fill(NaN);
  return {
    held,
    remember: calls.remember,
    known: (): number[][] =>
      strip.forms.map((_, f) => {
        const out: number[] = [];
        for (let k = f * held; k < (f + 1) * held && !Number.isNaN(hollowX[k]!); k++)
          out.push(hollowX[k]!, hollowY[k]!);
        return out;
      }),
  };
}
