import { describe, expect, it } from 'vitest';
import { addUp, renderPhrase, shareOf, t, TELL_BOTH, TELL_CM, TELL_IN } from '../index.ts';

const IN = 25.4;
const SIXTEENTHS = { in: 16 } as const;
const texts = (sum: ReturnType<typeof addUp>) => [sum.total.text, ...sum.terms.map((s) => s.text)];

describe('figures that are to add up', () => {
  it('never reads 7/8 in = 6 × 1/8 in as exact', () => {
    // 7/8 over six seams is 7/48 in each; the nearest sixteenth is 1/8, and six of them are 3/4.
    const total = (7 / 8) * IN;
    const sum = addUp(total, [{ mm: total / 6, times: 6 }], SIXTEENTHS);
    expect(texts(sum)).toEqual(['7/8 in', '≈ 1/8 in']);
    expect(sum.terms[0]!.about).toBe(true);
  });

  it('says nothing where the figures as written add up', () => {
    expect(texts(addUp(1.5 * IN, [{ mm: IN / 4, times: 6 }], SIXTEENTHS))).toEqual(['1 1/2 in', '1/4 in']);
    // 25 mm is a hair under an inch, but who reads 1 in = 4 × 1/4 in reads a sum that is right.
    expect(texts(addUp(25, [{ mm: 6.25, times: 4 }], SIXTEENTHS))).toEqual(['1 in', '1/4 in']);
  });

  it('marks the rounded figures of a sum that does not add up, and no other', () => {
    // Body 36 1/2 in + ease 2 5/16 in = 38 13/16 in, in eighths: 36 1/2 + 2 3/8 reads as 38 7/8, and 38 13/16 is written 38 7/8 too.
    expect(texts(addUp(38.8125 * IN, [{ mm: 36.5 * IN }, { mm: 2.3125 * IN }], { in: 8 }))).toEqual([
      '38 7/8 in',
      '36 1/2 in',
      '2 3/8 in',
    ]);
    // 1 1/16 + 1 1/16 = 2 1/8: in eighths 1 1/8 + 1 1/8 reads as 2 1/4.
    expect(texts(addUp(2.125 * IN, [{ mm: 1.0625 * IN }, { mm: 1.0625 * IN }], { in: 8 }))).toEqual([
      '2 1/8 in',
      '≈ 1 1/8 in',
      '≈ 1 1/8 in',
    ]);
  });

  it('never writes a share that is there as nothing', () => {
    // 1/16 in over four edges is 1/64 in at each: less than the 1/32 in that is still written as 1/16.
    expect(texts(addUp(IN / 16, [{ mm: IN / 64, times: 4 }], SIXTEENTHS))).toEqual(['1/16 in', '< 1/32 in']);
    expect(texts(addUp(1, [{ mm: 0.25, times: 4 }], 'cm'))).toEqual(['0.1 cm', '< 0.05 cm']);
  });

  it('keeps to centimetres by the millimetre, and to signs', () => {
    expect(texts(addUp(-10, [{ mm: -10 / 4, times: 4 }], 'cm'))).toEqual(['-1 cm', '≈ -0.2 cm']);
    expect(texts(addUp(-12, [{ mm: -3, times: 4 }], 'cm'))).toEqual(['-1.2 cm', '-0.3 cm']);
  });
});

describe('a share in a sentence', () => {
  const phrase = t`= ${shareOf((7 / 8) * IN, 6)} at each`;
  it('is called about where so many of it as written are not the whole', () => {
    expect(renderPhrase(phrase, TELL_IN)).toBe('= about 1/8 in at each');
    expect(renderPhrase(t`= ${shareOf(1.5 * IN, 6)} at each`, TELL_IN)).toBe('= 1/4 in at each');
    expect(renderPhrase(t`= ${shareOf(30, 4)} at each`, TELL_CM)).toBe('= 7.5 mm at each');
    expect(renderPhrase(t`= ${shareOf(40, 12)} at each`, TELL_CM)).toBe('= about 3.3 mm at each');
  });

  it('in each of the two units by itself, and not besides being under the least', () => {
    expect(renderPhrase(t`${shareOf(30, 4)}`, TELL_BOTH)).toBe('7.5 mm (about 5/16 in)');
    expect(renderPhrase(t`${shareOf(6, 12)}`, TELL_IN)).toBe('under 1/16 in');
  });
});
