import { describe, expect, it } from 'vitest';
import {
  bodyReading,
  bodyValue,
  doubtEntry,
  doubts,
  levelName,
  levelNamed,
  levelWord,
  MEASURE_IDS,
  MEASURES,
  measureName,
  measureNamed,
  measureWord,
  nearestWord,
  renderPhrase,
  sayQuestion,
  t,
  TELL_CM,
  tellOf,
  type Body,
  type Reading,
} from '../index.ts';

function person(readings: Record<string, (number | Reading)[]>, wearer: Body['wearer'] = 'woman'): Body {
  const taken = Object.entries(readings).map(([id, list]) => [
    id,
    list.map((r) => (typeof r === 'number' ? { value: r } : r)),
  ]);
  return { id: 'p', name: 'Pim', wearer, show: 'in', waist: 'natural', readings: Object.fromEntries(taken) };
}

describe('the measures', () => {
  it('all have names, a way to take them and ranges that rise', () => {
    for (const id of MEASURE_IDS) {
      const m = MEASURES[id];
      expect(m.how.length, id).toBeGreaterThan(25);
      for (const [least, most] of Object.values(m.range)) expect(least, id).toBeLessThan(most);
    }
  });

  it('are found by their id, their ISO name and common US names', () => {
    expect(measureNamed('bust-girth')).toBe('bust-girth');
    expect(measureNamed('Full Bust')).toBe('bust-girth');
    expect(measureNamed('underbust girth')).toBe('under-bust-girth');
    expect(measureNamed('inseam')).toBe('inside-leg-length');
    expect(measureNamed('front chest arc')).toBe('front-bust-arc');
    expect(measureNamed('under-chest')).toBe('under-bust-girth');
    // EN 13402-1 and ISO 8559-1 take the neck girth at mid-neck, apart from the neck base.
    for (const word of ['neck', 'Collar', 'mid-neck girth', 'neck girth', 'neckband'])
      expect(measureNamed(word), word).toBe('neck-girth');
    expect(measureNamed('neck base')).toBe('neck-base-girth');
    expect(levelNamed('collar')).toBe('neck');
    expect(measureNamed('__proto__')).toBeNull();
    expect(levelNamed('bust-girth')).toBe('bust');
    expect(levelNamed('high hip')).toBe('high-hip');
    expect(nearestWord('bust-grith', MEASURE_IDS)).toBe('bust-girth');
    expect(nearestWord('zzzzzzzzzz', MEASURE_IDS)).toBeNull();
  });
});

describe('the words of a wearer', () => {
  it('are chest for a man and a child, bust for a woman and where nobody says', () => {
    const said = (wearer?: Body['wearer']): string =>
      renderPhrase(t`${measureWord('upper-bust-girth')}, ${levelWord('bust')}, ${measureWord('hip-girth')}`, {
        unit: 'cm',
        ...(wearer ? { wearer } : {}),
      });
    expect([said(), said('woman')]).toEqual(['upper bust, bust, hip', 'upper bust, bust, hip']);
    expect([said('man'), said('child')]).toEqual(['upper chest, chest, hip', 'upper chest, chest, hip']);
    expect(measureName('front-bust-arc', 'man')).toBe('front chest arc');
    expect(levelName('bust', 'child')).toBe('chest');
    expect(tellOf({ show: 'in', wearer: 'child' })).toBe(tellOf({ show: 'in', wearer: 'child' }));
    // No measure of theirs is called after a bust.
    for (const id of MEASURE_IDS) expect(measureName(id, 'child'), id).not.toContain('bust');
  });
});

/** Repeat girths within 10 mm and lengths within 6 mm are equal, else a third is asked for (trade notes 1.2, common practice). */
describe('repeat readings', () => {
  it('averages readings that agree', () => {
    expect(bodyValue(person({ 'bust-girth': [900, 908] }), 'bust-girth')).toBe(904);
    expect(bodyReading(person({ 'bust-girth': [900, 908] }), 'bust-girth')).toEqual({
      value: 904,
      from: 2,
      ask: null,
    });
  });

  it('asks for a third where two girths differ by over 10 mm or two lengths by over 6 mm', () => {
    expect(bodyReading(person({ 'bust-girth': [900, 911] }), 'bust-girth')?.ask).toBe('third');
    expect(bodyReading(person({ 'bust-girth': [900, 910] }), 'bust-girth')?.ask).toBeNull();
    expect(bodyReading(person({ 'back-waist-length': [400, 407] }), 'back-waist-length')?.ask).toBe('third');
    expect(bodyReading(person({ 'back-waist-length': [400, 406] }), 'back-waist-length')?.ask).toBeNull();
  });

  it('lets the third settle it', () => {
    expect(bodyReading(person({ 'bust-girth': [900, 930, 926] }), 'bust-girth')).toEqual({
      value: 928,
      from: 2,
      ask: null,
    });
  });

  it('forgets what is older than six months beside something newer', () => {
    const old = { value: 980, on: '2025-01-10' };
    const fresh = { value: 930, on: '2026-01-10' };
    expect(bodyValue(person({ 'bust-girth': [old, fresh] }), 'bust-girth')).toBe(930);
  });

  it('takes the mean of left and right, whose difference is no doubt, and gives either where it is asked', () => {
    const body = person({
      'shoulder-slope': [
        { value: 18, side: 'left' },
        { value: 26, side: 'right' },
        { value: 24, side: 'right' },
      ],
    });
    expect(bodyReading(body, 'shoulder-slope')).toEqual({ value: 21.5, from: 3, ask: null });
    expect(bodyValue(body, 'shoulder-slope', 'left')).toBe(18);
    expect(bodyValue(body, 'shoulder-slope', 'right')).toBe(25);
  });

  it('takes the larger of two arms, for both sleeves are cut alike', () => {
    const body = person({
      'upper-arm-girth': [
        { value: 290, side: 'left' },
        { value: 312, side: 'right' },
      ],
    });
    expect(bodyValue(body, 'upper-arm-girth')).toBe(312);
    expect(bodyValue(body, 'upper-arm-girth', 'left')).toBe(290);
  });

  it('knows of a side what was said of no side, but nothing of what was taken on the other', () => {
    expect(bodyValue(person({ 'shoulder-slope': [20] }), 'shoulder-slope', 'left')).toBe(20);
    const right = person({ 'shoulder-slope': [{ value: 26, side: 'right' }] });
    expect(bodyValue(right, 'shoulder-slope', 'left')).toBeUndefined();
    expect(bodyValue(right, 'shoulder-slope')).toBe(26);
  });

  it('gives the slope of a shoulder from its drop and its length, where no angle was taken', () => {
    // A right triangle: 3 down for 6 along is the sine of 30°.
    const body = person({ 'shoulder-drop': [60], 'shoulder-length': [120] });
    expect(bodyValue(body, 'shoulder-slope')).toBeCloseTo(30, 9);
    expect(bodyValue(person({ 'shoulder-drop': [60] }), 'shoulder-slope')).toBeUndefined();
    expect(bodyValue(person({ 'shoulder-drop': [60], 'shoulder-length': [50] }), 'shoulder-slope')).toBe(
      undefined,
    );
    const both = person({ 'shoulder-slope': [22], 'shoulder-drop': [60], 'shoulder-length': [120] });
    expect(bodyValue(both, 'shoulder-slope')).toBe(22);
    const sided = person({
      'shoulder-drop': [
        { value: 60, side: 'left' },
        { value: 30, side: 'right' },
      ],
      'shoulder-length': [120],
    });
    expect(bodyValue(sided, 'shoulder-slope', 'left')).toBeCloseTo(30, 9);
    expect(bodyValue(sided, 'shoulder-slope', 'right')).toBeCloseTo(14.4775, 4);
  });

  it('knows nothing of a measure not taken', () => {
    expect(bodyValue(person({}), 'bust-girth')).toBeUndefined();
    expect(bodyValue(person({ 'bust-girth': [] }), 'bust-girth')).toBeUndefined();
  });
});

describe('a doubtful entry', () => {
  it('a bust of 40 cm is asked about: 40 inches?', () => {
    const q = doubtEntry('bust-girth', 400, 'woman');
    expect(q?.code).toBe('unit-doubtful');
    expect(q?.suggest?.value).toBeCloseTo(1016, 6);
    expect(renderPhrase(q!.suggest!.say, TELL_CM)).toBe('inches: 40 in');
  });

  it('a bust of 92 inches is asked about: 92 centimetres?', () => {
    expect(doubtEntry('bust-girth', 92 * 25.4, 'woman')?.suggest?.value).toBeCloseTo(920, 6);
  });

  it('a hip of 96 mm is asked about: 96 centimetres?', () => {
    expect(doubtEntry('hip-girth', 96, 'woman')?.suggest?.value).toBeCloseTo(960, 6);
  });

  it('an ordinary entry is not asked about', () => {
    expect(doubtEntry('bust-girth', 920, 'woman')).toBeNull();
    expect(doubtEntry('bust-girth', 600, 'child')).toBeNull();
  });

  it('a waist far above the hip is asked about', () => {
    const asked = doubts(person({ 'waist-girth': [1010, 1012], 'hip-girth': [800, 802] }));
    expect(asked).toHaveLength(1);
    expect(asked[0]).toMatchObject({ code: 'swapped', measure: 'waist-girth', other: 'hip-girth' });
  });

  it('a waist a little above the hip is a body like others', () => {
    expect(doubts(person({ 'waist-girth': [1010, 1012], 'hip-girth': [980, 982] }))).toEqual([]);
  });

  it('a crotch length whose parts do not make up the whole is asked about', () => {
    const parts = (whole: number): string[] =>
      doubts(
        person({ 'crotch-length-front': [320], 'crotch-length-back': [400], 'crotch-length': [whole] }),
      ).map((q) => q.code);
    expect(parts(732)).toEqual([]);
    expect(parts(740)).toEqual(['parts-apart']);
  });

  it('no sentence about a reading says what a body is like', () => {
    const asked = doubts(
      person({
        'upper-bust-girth': [3000],
        'hip-girth': [96],
        'waist-girth': [1400, 1401],
        'bust-girth': [900],
      }),
    ).map((q) => sayQuestion(q, TELL_CM));
    expect(asked.length).toBeGreaterThan(4);
    for (const said of asked)
      expect(said).not.toMatch(/\ba (upper|bust|waist|hip)|unlikely|anyone|abnormal/i);
  });

  it('a reading said to be right is not doubted again; a new one beside it is', () => {
    const sure = { value: 400, sure: true } as const;
    const codes = (body: Body): string[] => doubts(body).map((q) => q.code);
    expect(codes(person({ 'bust-girth': [400] }))).toContain('unit-doubtful');
    expect(codes(person({ 'bust-girth': [sure] }))).toEqual(['second-reading']);
    expect(codes(person({ 'bust-girth': [sure, 402] }))).toContain('unit-doubtful');
    // Of a pair both have to be: the other may be the one that is wrong.
    const pair = (waist: Reading, hip: Reading): string[] =>
      codes(person({ 'waist-girth': [waist, waist], 'hip-girth': [hip, hip] }));
    const [waist, hip] = [{ value: 1010 }, { value: 800 }];
    expect(pair({ ...waist, sure: true }, hip)).toEqual(['swapped']);
    expect(pair({ ...waist, sure: true }, { ...hip, sure: true })).toEqual([]);
  });

  it('girths read once are asked for a second time', () => {
    expect(doubts(person({ 'bust-girth': [920], 'back-waist-length': [400] })).map((q) => q.code)).toEqual([
      'second-reading',
    ]);
  });
});
