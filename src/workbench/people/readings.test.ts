import { describe, expect, it } from 'vitest';
import type { Body } from '../../garment/index.ts';
import { putReading, putSide } from './readings.ts';

const body: Body = {
  id: 'p',
  name: 'Pim',
  wearer: 'woman',
  show: 'cm',
  waist: 'natural',
  readings: { 'shoulder-slope': [{ value: 20 }, { value: 22 }] },
};

describe('the side of a reading', () => {
  it('is said of that reading only, and can be unsaid', () => {
    const left = putSide(body, 'shoulder-slope', 1, 'left');
    expect(left.readings['shoulder-slope']).toEqual([{ value: 20 }, { value: 22, side: 'left' }]);
    expect(putSide(left, 'shoulder-slope', 1, undefined)).toEqual(body);
  });

  it('stays when the number is written anew', () => {
    const left = putSide(body, 'shoulder-slope', 0, 'left');
    const anew = putReading(left, 'shoulder-slope', 0, 21, '21', '2026-01-02');
    expect(anew.readings['shoulder-slope']?.[0]).toEqual({
      value: 21,
      typed: '21',
      on: '2026-01-02',
      side: 'left',
    });
  });
});
