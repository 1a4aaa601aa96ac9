import { expect, it } from 'vitest';
import { dropOldest } from './patterns-there.ts';

it('the page and the worker hold the same few patterns, however many are edited', () => {
  const sent = new Set<string>();
  const there = new Map<string, string>();
  for (let edit = 0; edit < 30; edit++) {
    // Every edit makes a pattern; now and then an undo brings back one of before.
    const mark = `pattern ${edit % 7 === 0 ? edit - 4 : edit}`;
    if (sent.has(mark)) {
      expect(there.has(mark)).toBe(true);
      continue;
    }
    sent.add(mark);
    dropOldest(sent);
    there.set(mark, mark);
    dropOldest(there);
    expect([...there.keys()]).toEqual([...sent]);
  }
  expect(sent.size).toBe(8);
});
