import { describe, expect, it } from 'vitest';
import { reuse } from './reuse.ts';

describe('what did not change keeps its identity', () => {
  it('gives the old object back when everything in it says the same', () => {
    const old = { a: [{ x: 1, y: 2 }], b: 'c' };
    expect(reuse(old, structuredClone(old))).toBe(old);
  });

  it('keeps the untouched parts of something changed', () => {
    const old = {
      pieces: [
        { id: 'front', path: [1, 2] },
        { id: 'back', path: [3] },
      ],
      title: 'A',
    };
    const next = structuredClone(old);
    next.pieces[1]!.path[0] = 4;
    const got = reuse(old, next);
    expect(got).toEqual(next);
    expect(got).not.toBe(old);
    expect(got.pieces[0]).toBe(old.pieces[0]);
    expect(got.pieces[1]).not.toBe(old.pieces[1]);
  });

  it('sees a field that came or went, even one that is undefined', () => {
    const with_: { a?: number | undefined } = { a: undefined };
    expect('a' in reuse({}, with_)).toBe(true);
    expect('a' in reuse(with_, {} as { a?: number })).toBe(false);
    expect(reuse([1, 2], [1])).toEqual([1]);
    expect(reuse([1], { 0: 1 })).toEqual({ 0: 1 });
    expect(reuse(null, { a: 1 })).toEqual({ a: 1 });
  });
});
