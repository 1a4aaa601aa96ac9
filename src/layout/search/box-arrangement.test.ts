import { describe, expect, it } from 'vitest';
import { boxArrangement } from './box-arrangement.ts';
import type { StripShape } from './strip.ts';
import { stripForms } from './strip.ts';

const rectangle = (long: number, high: number): Float64Array =>
  Float64Array.from([0, 0, long, 0, long, high, 0, high]);
const shape = (long: number, high: number, count: number, more: Partial<StripShape> = {}): StripShape => ({
  outline: rectangle(long, high),
  count,
  turns: [{ angle: 0 }],
  ...more,
});

function spots(width: number, shapes: readonly StripShape[], most?: number): number[][] | null {
  const kept = boxArrangement(stripForms({ width, shapes, ...(most === undefined ? {} : { most }) }));
  return kept && [...kept.places.x].map((x, i) => [x, kept.places.y[i]!]);
}

describe('boxes laid one after another (worked by hand)', () => {
  it('stand in rows that fill the width', () => {
    expect(spots(90, [shape(40, 30, 6)])).toEqual([
      [0, 0],
      [0, 30],
      [0, 60],
      [40, 0],
      [40, 30],
      [40, 60],
    ]);
  });
  it('fill what larger ones left', () => {
    expect(spots(50, [shape(10, 15, 2), shape(40, 30, 1), shape(20, 20, 1)])).toEqual([
      [20, 30],
      [30, 30],
      [0, 0],
      [0, 30],
    ]);
  });
  it.each([
    [0, 90],
    [90, 0],
  ])('lie in the turn that ends soonest (of %d and %d degrees)', (...angles) => {
    const turns = angles.map((angle) => ({ angle }));
    const kept = boxArrangement(stripForms({ width: 50, shapes: [shape(40, 30, 1, { turns })] }));
    expect(kept!.length).toBeCloseTo(30, 9);
  });
  it('keep off flaws and pinned pieces', () => {
    const flaw = shape(10, 30, 1, { pinned: { x: 5, y: 10 }, obstacle: true });
    // Under and over the flaw 10 are free: too little for the largest, enough for the small ones.
    expect(spots(50, [flaw, shape(20, 15, 1), shape(15, 8, 2)])).toEqual([
      [5, 10],
      [15, 0],
      [0, 0],
      [0, 40],
    ]);
  });
  it('stand on their rails and in their lanes', () => {
    const turns = [{ angle: 0, railX: { at: 3, step: 10 }, railY: { at: 2, step: 0 } }];
    expect(spots(50, [shape(8, 30, 2, { turns })])).toEqual([
      [3, 2],
      [13, 2],
    ]);
    expect(spots(50, [shape(8, 20, 2, { turns: [{ angle: 0, lane: [25, 50] }] })])).toEqual([
      [0, 25],
      [8, 25],
    ]);
  });
  it('fill a lane to its edge, rounding or not', () => {
    // 0.1 + 0.2 is a little more than 0.3.
    const turns = [{ angle: 0, lane: [0, 0.3] as const }];
    expect(0.1 + 0.2).toBeGreaterThan(0.3);
    const laid = spots(5, [shape(1, 0.2, 1, { turns }), shape(1, 0.1, 1, { turns })]);
    expect(laid!.map(([x]) => x)).toEqual([0, 0]);
  });
  it('are none where the cloth ends before they do', () => {
    expect(spots(50, [shape(40, 30, 2)], 79)).toBeNull();
    expect(spots(50, [shape(40, 30, 2)], 80)).toEqual([
      [0, 0],
      [40, 0],
    ]);
  });
});
