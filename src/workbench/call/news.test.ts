import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { make, newFitting } from '../../pipeline/index.ts';
import { CAST, sample } from '../../samples/index.ts';
import { heard, newsOf } from './news.ts';

describe('what is new in a value', () => {
  it('tells any plain value from any other', () => {
    // No key of ours is called so, and a plain object cannot bear it.
    const plain = fc.jsonValue({ maxDepth: 5 }).filter((v) => !JSON.stringify(v).includes('__proto__'));
    fc.assert(
      fc.property(plain, plain, (old, next) => {
        expect(heard(old, structuredClone(newsOf(old, next)))).toEqual(next);
      }),
    );
  });

  it('leaves what did not change the object it was, and sends little of a garment in which one amount moved', () => {
    const own = newFitting({
      body: CAST[0]!,
      pattern: sample('stage-bodice'),
      on: '2026-01-01',
      id: 'news',
      title: 'News',
    });
    const made = [2, 3].map(
      (amount) =>
        make({
          ...own,
          steps: [
            { id: 'a', kind: 'alter', entry: 'sleeve-length', params: { above: amount } },
            ...own.steps,
          ],
        }).garment,
    );
    const news = newsOf(made[0], made[1]);
    const now = heard<(typeof made)[number]>(made[0], news);
    expect(now).toEqual(made[1]);
    expect(now).not.toEqual(made[0]);
    for (const [i, piece] of now.pieces.entries()) {
      const moved = /sleeve/.test(piece.id);
      expect(piece === made[0]!.pieces[i], piece.id).toBe(!moved);
    }
    expect(JSON.stringify(news).length).toBeLessThan(JSON.stringify(made[1]).length / 4);
  });
});
