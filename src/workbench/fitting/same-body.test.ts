import { expect, it } from 'vitest';
import { readBody, writeBody, type Body } from '../../garment/index.ts';
import { sameBody } from './same-body.ts';

const typed: Body = {
  id: 'odile',
  name: 'Odile Fenn',
  wearer: 'woman',
  show: 'in',
  waist: 'natural',
  readings: {
    'waist-girth': [{ value: 838.2, typed: '33' }],
    'bust-girth': [{ typed: '40 1/2', value: 1028.7 }],
  },
};

it('a sheet read back from the disk says the same as the one typed, though its fields stand in another order', () => {
  const back = readBody(writeBody(typed));
  expect(JSON.stringify(back)).not.toBe(JSON.stringify(typed));
  expect(sameBody(back, typed)).toBe(true);
});

it('another reading, or one more, is another sheet', () => {
  const waist = [{ value: 840, typed: '84 cm' }];
  expect(sameBody({ ...typed, readings: { ...typed.readings, 'waist-girth': waist } }, typed)).toBe(false);
  expect(sameBody({ ...typed, readings: { ...typed.readings, 'hip-girth': waist } }, typed)).toBe(false);
});
