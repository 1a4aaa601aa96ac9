import { describe, expect, it } from 'vitest';
import { beforeWashing, convertYardage, metresUp, purchase, yardsUp } from './buy.ts';
import { repeatRule } from './cloth-needs.ts';

const YARD = 914.4;

describe('what to buy', () => {
  // Trade notes T15 and 7.2 (derived): length ÷ (1 − shrink), up to an eighth of a yard.
  it.each([
    [3, 0.05, '3 1/4 yd'],
    [2.5, 0.03, '2 5/8 yd'],
    [2.5, 0.08, '2 3/4 yd'],
  ])('%d yd at %d shrinkage: %s', (yards, shrink, text) => {
    expect(yardsUp(beforeWashing(yards * YARD, shrink)).text).toBe(text);
  });
  it('rounds metres up to 5 cm, and a whole step stays', () => {
    expect(metresUp(1301).text).toBe('1.35 m');
    expect(metresUp(1350).text).toBe('1.35 m');
  });
  it('tells cost and what is left', () => {
    const p = purchase('shell', 1400, 1900, { shrinkLength: 0.05, per: 'metre', price: 12 });
    expect(p.metres.text).toBe('2.00 m');
    expect(p.cost).toBe(24);
    expect(p.remnant).toBeCloseTo(0, 6);
  });
  // Trade notes T16 (seen): repeat 4 1/4 in, two rows, 8 1/2 in.
  it('follows the shop rule for a repeat', () => expect(repeatRule(2, 4.25)).toBe(8.5));
  // The conversion table's own row: 2 7/8 yd of 36 in is 1 3/4 yd of 60 in (seen, trade notes 7.1).
  it('reads the conversion table', () => {
    expect(convertYardage(2.875 * YARD, 36 * 25.4, 60 * 25.4)! / YARD).toBeCloseTo(1.75, 9);
    expect(convertYardage(2.875 * YARD, 47 * 25.4, 60 * 25.4)).toBeNull();
  });
});
