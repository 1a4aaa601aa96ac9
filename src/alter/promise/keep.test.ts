import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../measure/index.ts';
import { promiseFindings } from './keep.ts';

const waist: Quantity = { is: 'girth', level: 'waist' };
const angle: Quantity = { is: 'dart', piece: 'front', dart: 'bust', as: 'angle' };
const short = (of: Quantity, off: number, told: readonly Quantity['is'][] = []) =>
  promiseFindings([{ promised: { of, by: 10 }, got: 10 + off, kept: false }], told).map((f) => [
    f.code,
    f.severity,
    f.amount,
  ]);

describe('a promise that was not reached', () => {
  it('is a warning from what a seam is warned of (1.5 mm, docs/architecture.md), and a note below', () => {
    expect(short(waist, -1.5)).toEqual([['not-reached', 'warning', -1.5]]);
    expect(short(waist, 1.25)).toEqual([['not-reached', 'note', 1.25]]);
  });

  it('is a warning for a dart’s angle, which is in degrees, and a note where the entry has said so itself', () => {
    expect(short(angle, 0.5)).toEqual([['not-reached', 'warning', 0.5]]);
    expect(short(waist, 20, ['girth'])).toEqual([['not-reached', 'note', 20]]);
  });
});
