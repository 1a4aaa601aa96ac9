import { describe, expect, it } from 'vitest';
import { isMissing, type Noted } from './journal.ts';

const noted = (turn: number, acts: number): Noted => ({
  key: 'person/p' as Noted['key'],
  doc: {},
  say: '',
  on: '',
  turn,
  acts,
});

describe('what was noted before a tab was killed', () => {
  it('is missing while the database has not written the last of the acts, though it wrote some', () => {
    expect([7, 8, 9].map((disk) => isMissing(noted(7, 3), disk))).toEqual([true, true, true]);
  });
  it('is out of date once all are written, or the document went on elsewhere', () => {
    expect([10, 12].map((disk) => isMissing(noted(7, 3), disk))).toEqual([false, false]);
  });
  it('is out of date where the disk is older than what the tab began from', () => {
    expect(isMissing(noted(7, 1), 6)).toBe(false);
  });
});
