import { describe, expect, it } from 'vitest';
import { doubts, readFitting, writeFitting } from '../garment/index.ts';
import type { Body, MeasureId } from '../garment/index.ts';
import { CAST, SAMPLES, demoFitting, demoFittings } from './index.ts';
import { ANSUR_WOMEN } from './women-table.ts';

const value = (body: Body, id: MeasureId): number => body.readings[id]!.at(-1)!.value;
const member = (id: string): Body => CAST.find((b) => b.id === id)!;
/** What a woman of this stature, bust, waist and hip has on average in ANSUR I. */
const usual = (body: Body, measure: keyof typeof ANSUR_WOMEN): number => {
  const [c, s, b, w, h] = ANSUR_WOMEN[measure];
  return (
    c +
    s * value(body, 'stature') +
    b * value(body, 'bust-girth') +
    w * value(body, 'waist-girth') +
    h * value(body, 'hip-girth')
  );
};

describe('the cast', () => {
  it('is six bodies that raise no doubt', () => {
    expect(CAST.length).toBe(6);
    for (const body of CAST) expect(doubts(body), body.name).toEqual([]);
  });

  it('differs as the play asks: short-waisted, full bust on a small frame, broad back, fuller in front, long-bodied, a child', () => {
    // residual SD of the back waist in ANSUR I is 22 mm, of the upper bust 22, across the back 27 (raw)
    expect(value(member('wilma'), 'back-waist-length')).toBeLessThan(
      usual(member('wilma'), 'backWaist') - 22,
    );
    const pia = member('pia');
    expect(value(pia, 'bust-girth') - value(pia, 'upper-bust-girth')).toBeGreaterThan(70);
    expect(value(pia, 'shoulder-length')).toBeLessThan(usual(pia, 'shoulder'));
    expect(value(member('rosa'), 'across-back')).toBeGreaterThan(352 + 1.5 * 27);
    const greta = member('greta');
    expect(value(greta, 'front-waist-arc') / value(greta, 'waist-girth')).toBeGreaterThan(0.54);
    expect(value(member('ines'), 'back-waist-length')).toBeGreaterThan(
      usual(member('ines'), 'backWaist') + 22,
    );
    expect(member('kit').wearer).toBe('child');
  });

  it('stays within three residual deviations of the survey in what the part does not ask for', () => {
    const spread = {
      neckBase: 12,
      upperArm: 12.5,
      wrist: 5.1,
      scyeDepth: 12.3,
      hipDepth: 21.8,
      arm: 19.4,
      thigh: 18.2,
      knee: 14.3,
      crotchDepth: 18.3,
    } as const;
    const ids = {
      neckBase: 'neck-base-girth',
      upperArm: 'upper-arm-girth',
      wrist: 'wrist-girth',
      scyeDepth: 'scye-depth',
      hipDepth: 'hip-depth',
      arm: 'arm-length',
      thigh: 'thigh-girth',
      knee: 'knee-girth',
      crotchDepth: 'crotch-depth',
    } as const;
    for (const body of CAST.filter((b) => b.wearer === 'woman')) {
      for (const key of Object.keys(spread) as (keyof typeof spread)[]) {
        expect(Math.abs(value(body, ids[key]) - usual(body, key)), `${body.name} ${key}`).toBeLessThan(
          3 * spread[key],
        );
      }
    }
  });
});

describe('the demo', () => {
  it('has one fitting for each of the cast, and every sample in it', () => {
    expect(demoFittings().map((f) => f.body)).toEqual(CAST);
    expect(new Set(demoFittings().map((f) => f.pattern.id))).toEqual(new Set(SAMPLES.map((s) => s.id)));
  });

  it('is the same bytes every time, and passes the reader of fitting documents', () => {
    const text = writeFitting(demoFitting());
    expect(writeFitting(readFitting(text))).toBe(text);
    expect(demoFitting().on).toBe('2026-03-02');
  });

  it('gives every wearer a garment drafted for such a wearer', () => {
    for (const fitting of demoFittings()) expect(fitting.pattern.wearer).toBe(fitting.body.wearer);
  });
});
