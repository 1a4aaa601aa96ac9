import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { readLength, renderPhrase, TELL_CM, TELL_IN, writeLength, type LengthUnit } from '../index.ts';

const mm = (text: string, unit: LengthUnit = 'in', signed = false): number => {
  const read = readLength(text, unit, { signed });
  if (read.kind !== 'length') throw new Error(`${text}: ${read.kind} ${renderPhrase(read.message, TELL_IN)}`);
  return read.mm;
};
const fault = (text: string, unit: LengthUnit = 'in'): string => {
  const read = readLength(text, unit);
  return read.kind === 'problem' ? read.code : read.kind;
};

/** 1 in = 25.4 mm exactly (international inch, 1959); every expected number below is that product. */
describe('reading a length as people type it', () => {
  it.each([
    ['40', 1016],
    ['40 1/2', 1028.7],
    ['40½', 1028.7],
    ['40 ½', 1028.7],
    ['40.5"', 1028.7],
    ['40-1/2 in', 1028.7],
    ['40 - 1/2 inches', 1028.7],
    ['40.5″', 1028.7],
    ["40.5''", 1028.7],
    ['40,5', 1028.7],
    ['3/8', 9.525],
    ['⅜', 9.525],
    ['3⁄8', 9.525],
    ['40 1⁄8 in.', 1019.175],
    ['40.125', 1019.175],
    ['.5', 12.7],
    ['102,9 cm', 1029],
    ['102.9cm', 1029],
    ['1029mm', 1029],
    ['1029 MM', 1029],
    ['1.63 m', 1630],
    ['5\' 4"', 1625.6],
    ['5′ 4½″', 1638.3],
    ['5 ft 4 in', 1625.6],
    ['5 ft', 1524],
    ['2 yd', 1828.8],
    ['\u00a040\u202f1/2\u00a0in ', 1028.7],
    ['40½ cm', 405],
  ])('%s is %d mm', (text, expected) => {
    expect(mm(text)).toBeWithinMm(expected, 1e-6);
  });

  it('takes the unit given when none is written', () => {
    expect(mm('102,9', 'cm')).toBe(1029);
    expect(readLength('102,9', 'cm')).toMatchObject({ unit: 'cm', unitSaid: false });
    expect(readLength('102,9 mm', 'cm')).toMatchObject({ unit: 'mm', unitSaid: true });
  });

  it('reads a change of either sign only where a change is asked for', () => {
    expect(mm('-1/2', 'in', true)).toBe(-12.7);
    expect(mm('−3/8 in', 'in', true)).toBe(-9.525);
    expect(mm('0', 'in', true)).toBe(0);
    expect(fault('-5')).toBe('negative');
    expect(fault('0')).toBe('zero');
  });

  it.each([
    ['', 'empty'],
    ['abc', 'not-a-number'],
    ['40 12', 'two-numbers'],
    ['40 9/8', 'odd-fraction'],
    ['40 1/7', 'odd-fraction'],
    ['1/0', 'zero-denominator'],
    ['40.5.2', 'not-a-number'],
    ['40 1/2 1/4', 'not-a-number'],
    ['1.029,5', 'not-a-number'],
    ['40 stone', 'unknown-unit'],
    ['5\' 13"', 'too-many-inches'],
    ['99999', 'too-large'],
    ['1e5', 'not-a-number'],
    ['NaN', 'not-a-number'],
    ['9'.repeat(41), 'too-long'],
  ])('%s is told: %s', (text, code) => {
    expect(fault(text)).toBe(code);
  });

  it('asks where a mark may part thousands or decimals', () => {
    const read = readLength('1,029 mm', 'in');
    expect(read).toMatchObject({ kind: 'doubt', code: 'thousands-or-decimal', mm: [1.029, 1029] });
    expect(fault('1.029 mm')).toBe('doubt');
    expect(fault('1,250 in')).toBe('doubt');
    expect(mm('1.250 in')).toBeWithinMm(31.75, 1e-9);
  });

  it('never throws and never gives anything but a finite length', () => {
    const piece = fc.constantFrom(...'0123456789 .,/-½⅜\'"′″”inchmft\u2044\t−+e'.split(''));
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 24 }),
        fc.constantFrom<LengthUnit>('in', 'cm', 'mm'),
        (chars, unit) => {
          const read = readLength(chars.join(''), unit);
          if (read.kind === 'length') expect(read.mm > 0 && read.mm <= 10_000).toBe(true);
          else expect(renderPhrase(read.message, TELL_CM).length).toBeGreaterThan(10);
        },
      ),
      { numRuns: 3000 },
    );
  });
});

describe('writing a length', () => {
  it('writes inches as a tape shows them', () => {
    expect(writeLength(1028.7, { in: 8 })).toBe('40 1/2 in');
    expect(writeLength(9.525, { in: 16 })).toBe('3/8 in');
    expect(writeLength(-31.75, { in: 8 })).toBe('-1 1/4 in');
    expect(writeLength(1016.2, { in: 8 })).toBe('40 in');
    expect(writeLength(-0.2, { in: 16 })).toBe('0 in');
    expect(writeLength(25.3, { in: 8 })).toBe('1 in');
  });

  it('writes mm and cm', () => {
    expect(writeLength(1028.7, 'mm')).toBe('1029 mm');
    expect(writeLength(1028.7, 'cm')).toBe('102.9 cm');
    expect(writeLength(-0.2, 'mm')).toBe('0 mm');
  });

  it('is read back within half of what it rounds to', () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 3000, noNaN: true }), (length) => {
        expect(mm(writeLength(length, { in: 16 }))).toBeWithinMm(length, 25.4 / 32 + 1e-6);
        expect(mm(writeLength(length, { in: 8 }))).toBeWithinMm(length, 25.4 / 16 + 1e-6);
        expect(mm(writeLength(length, 'mm'))).toBeWithinMm(length, 0.5 + 1e-6);
        expect(mm(writeLength(length, 'cm'))).toBeWithinMm(length, 0.5 + 1e-6);
      }),
    );
  });
});
