import { t } from '../garment/index.ts';
import { describe, expect, it } from 'vitest';
import type { Body, MeasureId } from '../garment/index.ts';
import { plausible } from './index.ts';

/** Readings in mm, each taken twice. */
function body(girths: Partial<Record<MeasureId, number>>, wearer: Body['wearer']): Body {
  const readings = Object.fromEntries(
    Object.entries(girths).map(([id, value]) => [id, [{ value }, { value }]]),
  );
  return { id: 'x', name: 'x', wearer, show: 'cm', waist: 'natural', readings };
}
const asked = (b: Body): string[] => plausible(b).map((q) => `${q.code} ${q.measure}`);

describe('a child is asked about by its height', () => {
  // A child 116 cm tall: chest 61, waist 57, head 52 cm in the table by height (EN 13402 practice, memory).
  const child = { stature: 1160, 'bust-girth': 620, 'waist-girth': 570, 'head-girth': 520 } as const;

  it('one near the table is not asked about, nor is one a good deal rounder', () => {
    expect(asked(body(child, 'child'))).toEqual([]);
    expect(asked(body({ ...child, 'bust-girth': 800, 'waist-girth': 840 }, 'child'))).toEqual([]);
  });

  it('a chest of a grown person on it is', () => {
    expect(asked(body({ ...child, 'bust-girth': 920 }, 'child'))).toEqual(['unusual bust-girth']);
  });

  it('without a height there is nothing to go by', () => {
    expect(asked(body({ 'bust-girth': 920 }, 'child'))).toEqual([]);
  });
});

describe('a grown person is asked about by all measures together', () => {
  // The mean woman of ANSUR I (1988): bust 907, upper 887, waist 726, hip 967 mm.
  const woman = { 'bust-girth': 907, 'upper-bust-girth': 887, 'waist-girth': 726, 'hip-girth': 967 } as const;

  it('the mean woman is not', () => {
    expect(asked(body(woman, 'woman'))).toEqual([]);
  });

  it('bust and waist exchanged is one question with the answer', () => {
    const [question, ...more] = plausible(body({ ...woman, 'bust-girth': 726, 'waist-girth': 907 }, 'woman'));
    const right = { 'bust-girth': 907, 'waist-girth': 726 }[question!.measure as 'bust-girth'];
    expect(question).toMatchObject({ code: 'swapped', suggest: { value: right, say: t`exchange them` } });
    expect([question!.measure, question!.other].sort()).toEqual(['bust-girth', 'waist-girth']);
    expect(more).toEqual([]);
  });

  it('a hip of 967 taken down as inches of centimetres is asked back in its own unit', () => {
    const [question] = plausible(body({ ...woman, 'hip-girth': 967 / 2.54 }, 'woman'));
    expect(question).toMatchObject({ code: 'unit-doubtful', measure: 'hip-girth' });
    expect(question!.suggest!.value).toBeCloseTo(967, 6);
  });

  it('an ISO waist is another measure than the survey’s natural one and is left alone', () => {
    expect(asked({ ...body({ ...woman, 'waist-girth': 800 }, 'woman'), waist: 'iso' })).toEqual([]);
  });
});
