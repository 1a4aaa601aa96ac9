import { describe, expect, it } from 'vitest';
import {
  categoryBounds,
  categoryOf,
  closeReduction,
  CROTCH_DEPTH_EASE,
  easeRow,
  FIT_CATEGORIES,
  KNIT_CLASSES,
  leastEase,
  passes,
  smallestGirth,
  WEARING_EASE,
} from '../src/fit/index.ts';
import type { GarmentKind } from '../src/garment/index.ts';

const IN = 25.4;

/**
 * Wearing ease, trade notes 3.2. CWU16 = Central Washington University, Costume Text ch. 16 (seen whole); NM209/NM228 = New Mexico State
 * University guides (seen); the range of US bulletins 1950 to 2000 is from memory.
 */
describe('wearing ease as published', () => {
  const rows: [string, GarmentKind, number, number | null, 'seen' | 'memory'][] = [
    ['bust', 'bodice', 1.5, 2, 'seen'], // CWU16 bodice
    ['waist', 'dress', 0.75, 1, 'seen'], // CWU16 dress
    ['waist', 'skirt', 0.5, 0.75, 'seen'], // CWU16 skirt
    ['waist', 'trousers', 0.75, 1, 'seen'], // CWU16 trousers
    ['hip', 'dress', 2, 2.75, 'seen'], // CWU16 all garments
    ['hip', 'skirt', 2, 2.75, 'seen'],
    ['hip', 'trousers', 1.5, 2, 'seen'], // CWU16 trouser seat
    ['thigh', 'trousers', 1, 2, 'seen'], // CWU16 at least 1, NM209 1 to 2
    ['knee', 'trousers', 1, null, 'seen'], // NM209
    ['upper-arm', 'dress', 1.5, 2, 'memory'],
    ['wrist', 'dress', 0.5, 1, 'memory'],
    ['neck', 'dress', 0.25, 0.5, 'memory'],
  ];
  it.each(rows)('%s of a %s: %d to %s in (%s... %s)', (level, garment, least, most, mark) => {
    expect(easeRow(level, garment)).toMatchObject({ least, most, mark });
    expect(leastEase(level, garment)).toBeWithinMm(least * IN, 1e-9);
  });

  it('where sources disagree the lowest read in its source is the bound: bust 1 1/2 (CWU16), not 3 (NM228) or 2 1/2 (bulletins)', () => {
    const bust = WEARING_EASE.filter((r) => r.level === 'bust').map((r) => r.least);
    expect(bust).toEqual([1.5, 3, 2.5]);
    expect(leastEase('bust', 'dress')).toBe(1.5 * IN);
  });

  it('T11: crotch depth ease 1/2 in under a 36 in hip, 1 in over 38 (NM209, seen)', () => {
    expect(CROTCH_DEPTH_EASE).toMatchObject({ smallHip: 36, largeHip: 38, small: 0.5, large: 1 });
  });
});

/** Fit categories, trade notes 3.4: the trade ease chart reprinted in extension leaflets (memory), inches over the body. */
describe('fit categories', () => {
  it('are the chart’s', () => {
    expect(FIT_CATEGORIES).toEqual({
      dress: {
        close: [0, 2.875],
        fitted: [3, 4],
        'semi-fitted': [4.125, 5],
        loose: [5.125, 8],
        'very-loose': [8, null],
      },
      jacket: {
        fitted: [3.75, 4.25],
        'semi-fitted': [4.375, 5.75],
        loose: [5.875, 10],
        'very-loose': [10, null],
      },
      coat: { fitted: [5.25, 6.75], 'semi-fitted': [6.875, 8], loose: [8.125, 12], 'very-loose': [12, null] },
      lower: {
        close: [0, 1.875],
        fitted: [2, 3],
        'semi-fitted': [3.125, 4],
        loose: [4.125, 6],
        'very-loose': [6, null],
      },
    });
  });

  it.each([
    [2, 'bust', 'dress', 'close'],
    [3, 'bust', 'dress', 'fitted'],
    [4, 'bust', 'dress', 'fitted'],
    [4.0625, 'bust', 'dress', 'fitted'], // in the chart's gap: the row below
    [4.5, 'bust', 'dress', 'semi-fitted'],
    [8, 'bust', 'dress', 'loose'],
    [8.5, 'bust', 'dress', 'very-loose'],
    [2, 'bust', 'jacket', null], // the chart has no close jacket
    [4, 'bust', 'jacket', 'fitted'],
    [2.5, 'hip', 'skirt', 'fitted'],
    [5, 'hip', 'trousers', 'loose'],
    [1, 'waist', 'dress', null], // the chart has no waist
    [-1, 'bust', 'top', null],
  ] as const)('%d in at the %s of a %s is %s', (ease, level, garment, category) => {
    expect(categoryOf(ease * IN, level, garment)).toBe(category);
  });

  it('each category begins where the trade says', () => {
    expect(categoryBounds('fitted', 'bust', 'bodice')).toEqual({ least: 3 * IN, most: 4 * IN });
    expect(categoryBounds('very-loose', 'hip', 'skirt')?.most).toBe(Number.POSITIVE_INFINITY);
    expect(categoryBounds('close', 'bust', 'jacket')).toBeNull();
  });
});

/** Knits, trade notes 3.5: stretch tests (seen), classes and reductions (textbooks, memory), bounds (derived). */
describe('knits', () => {
  it('stretch tests: 4 in to 5 is 25 %, 10 to 14 is 40 %, 4 to 6 is 50 %, 4 to 8 is 100 % (seen); an opening passes what it stretches to', () => {
    for (const [from, to, share] of [
      [4, 5, 0.25],
      [10, 14, 0.4],
      [4, 6, 0.5],
      [4, 8, 1],
    ] as const) {
      expect((to - from) / from).toBeCloseTo(share, 9);
      expect(passes(from, share)).toBeCloseTo(to, 9);
    }
  });

  it('classes on a folded 5 in: stable to 5 7/8 (about 18 %), moderate 6 1/4, stretchy 7 1/2, super 10 (memory)', () => {
    expect(KNIT_CLASSES.map((c) => c.stretch)).toEqual([0.18, 0.25, 0.5, 1]);
    const reached = [5.875, 6.25, 7.5, 10].map((to) => to / 5 - 1);
    for (const [i, share] of reached.entries()) expect(share).toBeCloseTo(KNIT_CLASSES[i]!.stretch, 1.9);
  });

  it('reduced each way by 0, 2, 3 and 5 % (memory)', () => {
    expect([0.1, 0.18, 0.25, 0.5, 0.7, 1].map(closeReduction)).toEqual([0, 0, 0.02, 0.03, 0.03, 0.05]);
  });

  it('smallest girth: body 36 in, stretch 0.5, half of it useful: 28.8 in (derived)', () => {
    expect(smallestGirth(36, 0.5, 0.5)).toBeCloseTo(28.8, 9);
    expect(smallestGirth(36, 0.5, 0.9)).toBeCloseTo(28.8, 9); // never more than half
  });
});
