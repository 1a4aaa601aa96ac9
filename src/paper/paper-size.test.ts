import { describe, expect, it } from 'vitest';
import { InputError } from '../garment/index.ts';
import { readPaper } from './paper-size.ts';

describe('paper by name', () => {
  it('is known in both systems, by roll width and by size', () => {
    expect(readPaper('A4')).toMatchObject({ width: 210, height: 297 });
    expect(readPaper('letter')).toMatchObject({ width: 215.9, height: 279.4 });
    expect(readPaper('roll-36')).toMatchObject({ width: 914.4, height: null });
    expect(readPaper('roll-24').width).toBeCloseTo(609.6, 9);
    expect(readPaper('900x1500')).toMatchObject({ width: 900, height: 1500 });
    expect(readPaper('36x48in').height).toBeCloseTo(1219.2, 9);
  });

  it.each([
    '',
    'a9',
    '900',
    '900x',
    'x',
    '-900x100',
    '900xNaN',
    '5x5',
    '9e9x9e9',
    '0x0',
    'roll-',
    'roll-9999',
  ])('refuses “%s” and says what can be said', (text) => {
    expect(() => readPaper(text)).toThrow(InputError);
  });
});
