// Expected answers come from the order in which it is asked: lines, cloth, wearer, bust; allowances as patterns are printed with (trade.md 7.6).
import { t, MM_PER } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { allowanceWords, bustChoices, clothChoices, linesChoices, wearerChoices } from './import-choices.ts';
import { answered, importQuestions, stillMissing, withAnswer } from './import-questions.ts';

const silent = { offered: null, evidence: t`The file does not say.` };
const asks = (garment: Parameters<typeof importQuestions>[0], wearer?: 'woman' | 'man' | 'child') =>
  importQuestions(garment, wearer ? { wearer } : {}).map(({ ask }) => ask);

describe('what is asked', () => {
  it('is the lines, then the cloth, then the wearer, then the bust', () =>
    expect(asks('dress')).toEqual(['included', 'cloth', 'wearer', 'bustDifference']));

  it.each([
    ['skirt', 'woman'],
    ['trousers', 'woman'],
    ['top', 'man'],
    ['dress', 'child'],
  ] as const)('is nothing about a bust for a %s for a %s', (garment, wearer) =>
    expect(asks(garment, wearer)).not.toContain('bustDifference'),
  );

  it('must be answered but for the bust before the pattern can be kept', () => {
    expect(stillMissing('dress', {})).toEqual(['included', 'cloth', 'wearer']);
    expect(stillMissing('dress', { included: 0, wearer: 'woman' })).toEqual(['cloth']);
    expect(stillMissing('dress', { included: 0, cloth: { kind: 'woven' }, wearer: 'woman' })).toEqual([]);
  });
});

describe('what is said of the pattern', () => {
  it('is what was answered and nothing else', () => {
    expect(answered('skirt', {})).toEqual({ bustDifference: null });
    expect(answered('dress', { included: 15, wearer: 'woman', bustDifference: 0 })).toEqual({
      included: 15,
      wearer: 'woman',
      bustDifference: 0,
    });
  });

  it('is no bust difference where the garment has none to ask for, or nobody knows', () => {
    expect(answered('skirt', { bustDifference: 50 }).bustDifference).toBeNull();
    expect(answered('dress', { bustDifference: null }).bustDifference).toBeNull();
  });

  it('can be taken back', () => {
    const said = withAnswer({}, 'included', 15);
    expect(said).toEqual({ included: 15 });
    expect(withAnswer(said, 'included', undefined)).toEqual({});
  });
});

describe('answers offered', () => {
  it('begin with the usual allowances, 1.5 cm and 5/8 in first, and end with stitching lines', () => {
    expect(linesChoices(silent, false).map(({ words }) => words)).toEqual([
      'Cutting lines, 1.5 cm of allowance inside them',
      'Cutting lines, 5/8 in of allowance inside them',
      'Cutting lines, 1 cm of allowance inside them',
      'Cutting lines, 1/4 in of allowance inside them',
      'Cutting lines, 3/8 in of allowance inside them',
      'Cutting lines, 7 mm of allowance inside them',
      'Stitching lines, allowance is added outside them',
    ]);
  });

  it('begin with what the file says, with its words, and offer it once', () => {
    const [first, ...rest] = linesChoices({ offered: 10, evidence: t`“Nahtzugabe 1 cm”` }, false);
    expect(first).toEqual({
      value: 10,
      words: 'Cutting lines, 1 cm of allowance inside them',
      evidence: t`“Nahtzugabe 1 cm”`,
    });
    expect(rest).toHaveLength(6);
    expect(rest.map(({ value }) => value)).not.toContain(10);
    expect(rest.every(({ evidence }) => evidence === undefined)).toBe(true);
  });

  it('take in what the file says where it is no usual one', () => {
    expect(linesChoices({ offered: 12, evidence: t`“12 mm”` }, false)[0]!.words).toBe(
      'Cutting lines, 1.2 cm of allowance inside them',
    );
    expect(clothChoices({ offered: { kind: 'knit', stretch: 0.4 }, evidence: t`“40 %”` })[0]!.words).toBe(
      'A knit that stretches by 40 %',
    );
    expect(bustChoices({ offered: 60, evidence: t`“60 mm”` }, 'cm')[0]!.words).toBe('A difference of 6 cm');
  });

  it('say both where stitching lines are drawn inside cutting lines', () => {
    const [first, ...rest] = linesChoices({ offered: 15, evidence: t`twice` }, true);
    expect(first).toEqual({
      value: 15,
      words: 'Both, in two kinds of line: the outer one is cut, the inner one stitched, mostly 1.5 cm apart',
      evidence: t`twice`,
    });
    expect(rest.map(({ value }) => value)).not.toContain(15);
  });

  it('of the wearer put the file’s own first', () =>
    expect(wearerChoices({ offered: 'child', evidence: t`“Kinderhose”` })[0]!.words).toBe('A child'));

  it('of the bust begin with not known, in the person’s own unit', () =>
    expect(bustChoices(silent, 'in').map(({ words }) => words)).toEqual([
      'Not known',
      'A cup: 1 in',
      'B cup: 2 in',
      'C cup: 3 in',
      'D cup: 4 in',
      'DD cup: 5 in',
    ]));

  it('say an allowance as it is printed', () => {
    expect([15, (5 / 8) * MM_PER.in, 7, 10, 12.7].map(allowanceWords)).toEqual([
      '1.5 cm',
      '5/8 in',
      '7 mm',
      '1 cm',
      '1/2 in',
    ]);
  });
});
