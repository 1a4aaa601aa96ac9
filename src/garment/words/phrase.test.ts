import { describe, expect, it } from 'vitest';
import {
  called,
  calledAll,
  capital,
  clothLength,
  countOf,
  degrees,
  figure,
  fineLen,
  isPhrase,
  len,
  listOf,
  percent,
  sentences,
  t,
  TELL_BOTH,
  TELL_CM,
  TELL_IN,
  renderPhrase,
  word,
  type Phrase,
} from '../index.ts';

/** Every letter of the program's own words with an accent: a language nobody speaks. */
const ACCENTED = { ...TELL_CM, letters: (words: string): string => words.replace(/[a-z]/gi, '$&\u0301') };
const say = (phrase: Phrase, tell = TELL_CM): string => renderPhrase(phrase, tell);

describe('a phrase', () => {
  it('says a length in the unit of whoever reads, and in no other', () => {
    const phrase = t`${called('Seam')} is ${len(38.1)} longer.`;
    expect(say(phrase, TELL_IN)).toBe('Seam is 1 1/2 in longer.');
    expect(say(phrase, TELL_CM)).toBe('Seam is 3.8 cm longer.');
    expect(say(phrase, TELL_BOTH)).toBe('Seam is 38 mm (1 1/2 in) longer.');
    expect(say(phrase, { unit: 'in', fraction: 8 })).toBe('Seam is 1 1/2 in longer.');
  });

  it('does not call a small length nothing', () => {
    // Half a sixteenth of an inch is 0.79 mm; a metric tape shows millimetres.
    expect(say(t`${len(0.7)}`, TELL_IN)).toBe('under 1/16 in');
    expect(say(t`${len(0.9)}`, TELL_IN)).toBe('1/16 in');
    expect(say(t`${len(1)}`, { unit: 'in', fraction: 8 })).toBe('under 1/8 in');
    expect(say(t`${len(0.7)}`, TELL_CM)).toBe('0.7 mm');
    expect(say(t`${len(-0.01)}`, TELL_CM)).toBe('0 cm');
    expect(say(t`${len(0)}`, TELL_BOTH)).toBe('0 mm (0 in)');
  });

  it('keeps hundredths of a millimetre where a scale is told', () => {
    // 99.48 mm are 3.9165… in; on a tape both would be 100 mm and 3 15/16 in.
    const phrase = t`${fineLen(99.48)}`;
    expect([TELL_IN, TELL_CM, TELL_BOTH].map((tell) => say(phrase, tell))).toEqual([
      '3.917 in',
      '99.48 mm',
      '99.48 mm (3.917 in)',
    ]);
    expect(say(t`${fineLen(0.099478)}`, TELL_CM)).toBe('0.09948 mm');
  });

  it('says cloth in yards or metres', () => {
    const phrase = t`${clothLength(1371.6)}`;
    expect([TELL_IN, TELL_CM, TELL_BOTH].map((tell) => say(phrase, tell))).toEqual([
      '1.50 yd',
      '1.37 m',
      '1.37 m (1.50 yd)',
    ]);
  });

  it('counts, and lists as the language does', () => {
    expect(say(countOf(1, t`seam`, t`seams`))).toBe('1 seam');
    expect(say(countOf(0, t`seam`, t`seams`))).toBe('0 seams');
    expect(say(t`${calledAll(['A', 'B', 'C'], 'and')}`)).toBe('A, B and C');
    expect(say(t`${calledAll(['A', 'B'], 'or')}`)).toBe('A or B');
    expect(say(t`${listOf([t`A`, t`B`], ';')}`)).toBe('A; B');
    expect(say(t`${calledAll(['A', 'B'])}`)).toBe('A, B');
  });

  it('writes numbers without a sign on nothing', () => {
    expect(say(t`${degrees(2.04, 1)} ${degrees(-0.04)} ${percent(0.125)} ${figure(2, 1, 1)} ${1250}`)).toBe(
      '2° 0° 13 % 2.0 1250',
    );
  });

  it('takes phrases into phrases, leaves nothing out and adds nothing', () => {
    expect(say(sentences([t`One.`, null, t`Two.`]))).toBe('One. Two.');
    expect(say(t`a${null}b${t`c`}`)).toBe('abc');
    expect(t`a${null}b${t`c`}`).toEqual({ phrase: ['abc'] });
    expect(say(t`${capital(t`${word('level', 'hip', 'hip')}`)}: 1`)).toBe('Hip: 1');
  });

  it('is plain data, the same after a trip through JSON', () => {
    const phrase = t`${called('Front')}: ${len(3)} by ${countOf(2, t`edge`, t`edges`)}`;
    const back: unknown = JSON.parse(JSON.stringify(phrase));
    expect(back).toEqual(phrase);
    expect(isPhrase(back)).toBe(true);
    expect(isPhrase({ phrase: 'no' })).toBe(false);
  });

  it('hands every word of its own to a translation, and none of the person', () => {
    const phrase = t`Seam ${called('side')}: ${len(0.1)} ${word('level', 'hip', 'hip')} ${calledAll(['a', 'b'], 'and')} ${countOf(2, t`x`, t`y`)}`;
    const plain = say(phrase, ACCENTED).replace(/[a-z]\u0301/gi, '');
    // What is left are the person's names and the symbol of the unit.
    expect(plain.match(/[a-z]+/gi)).toEqual(['side', 'mm', 'a', 'b']);
  });
});
