import { describe, expect, it } from 'vitest';
import { hollows, NO_HOLLOWS } from './hollows.ts';

const known = (h: ReturnType<typeof hollows>, f: number): [number, number][] => {
  const out: [number, number][] = [];
  for (let k = f * h.held; k < (f + 1) * h.held && !Number.isNaN(h.x[k]!); k++) out.push([h.x[k]!, h.y[k]!]);
  return out;
};

describe('the hollows of a layout', () => {
  it('are kept for each form by itself', () => {
    const h = hollows(3, 0.5, NO_HOLLOWS);
    h.remember(1, 10, 20);
    h.remember(1, 12, 20);
    expect([0, 1, 2].map((f) => known(h, f))).toEqual([
      [],
      [
        [10, 20],
        [12, 20],
      ],
      [],
    ]);
  });

  it('close together are one, which moves to where it was found last', () => {
    const h = hollows(1, 0.5, NO_HOLLOWS);
    h.remember(0, 10, 20);
    h.remember(0, 30, 20);
    h.remember(0, 10.4, 19.6);
    expect(known(h, 0)).toEqual([
      [10.4, 19.6],
      [30, 20],
    ]);
    h.remember(0, 10.4, 20.2);
    expect(known(h, 0)).toHaveLength(3);
  });

  it('make room for new ones, the oldest first', () => {
    const h = hollows(1, 0.5, NO_HOLLOWS);
    for (let k = 0; k <= h.held; k++) h.remember(0, k, 0);
    const left = known(h, 0).map(([x]) => x);
    expect(left).toHaveLength(h.held);
    expect(left).not.toContain(0);
    expect(left).toContain(h.held);
  });

  it('are saved and go on as if they had not been', () => {
    const h = hollows(2, 0.5, NO_HOLLOWS);
    for (let k = 0; k < h.held + 5; k++) h.remember(0, k, -k);
    h.remember(1, 3, 4);
    const later = hollows(2, 0.5, JSON.parse(JSON.stringify(h.save())) as ReturnType<typeof h.save>);
    for (const each of [h, later]) each.remember(0, 100, 100);
    expect(known(later, 0)).toEqual(known(h, 0));
    expect(known(later, 1)).toEqual([[3, 4]]);
    expect(later.save()).toEqual(h.save());
  });
});
