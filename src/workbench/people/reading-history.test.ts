import { describe, expect, it } from 'vitest';
import { byDay } from './reading-history.ts';

describe('readings by day', () => {
  it('gives one mean for each day, oldest first, whatever the order they were typed in', () => {
    expect(
      byDay([
        { value: 1010, on: '2026-11-25' },
        { value: 1000, on: '2026-02-14' },
        { value: 1004, on: '2026-02-14' },
      ]),
    ).toEqual([
      { on: '2026-02-14', mean: 1002, count: 2 },
      { on: '2026-11-25', mean: 1010, count: 1 },
    ]);
  });

  it('keeps what has no day before what has one', () => {
    expect(byDay([{ value: 5, on: '2026-01-01' }, { value: 3 }]).map((d) => d.on)).toEqual([
      '',
      '2026-01-01',
    ]);
  });
});
