import { renderPhrase, TELL_BOTH, sentences } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import type { Observation } from '../../garment/index.ts';
import { applyStep } from '../step/apply-step.ts';
import { observe } from './observe.ts';
import { OBSERVABLES } from './observe-table.ts';
import { BODICE, PANELS, SKIRT, TROUSERS } from '../drawn/schematic.ts';

const IN = 25.4;
let n = 0;
const seen = (
  line: string,
  where: Observation['where'],
  direction: Observation['direction'],
  centre: number,
  side: number,
): Observation => ({
  id: `o${++n}`,
  line,
  where,
  direction,
  centre,
  side,
});

// Rows of docs/formulas.md, "Observations become amounts" (common practice), amounts derived.
describe('observations become alterations', () => {
  it('the waist sits 2 in low at centre back and 1 1/4 in at centre front; the hem should end 3/4 in lower', () => {
    const proposals = observe(
      [
        seen('hem', 'all', 'high', 0.75 * IN, 0.75 * IN),
        seen('waist line', 'back', 'low', 2 * IN, 1.25 * IN),
        seen('waist line', 'front', 'low', 1.25 * IN, 1.25 * IN),
      ],
      PANELS,
    );
    expect(proposals.map((p) => p.step?.entry)).toEqual(['length-above-waist', 'length-below-waist']);
    expect(proposals[0]!.step!.params).toEqual({ back: -2 * IN, front: -1.25 * IN, side: -1.25 * IN });
    // The hem rises by 1 1/4 in with the waist; it should be 3/4 in lower than now: 2 in in all.
    expect(proposals[1]!.step!.params['amount']).toBeWithinMm(2 * IN, 1e-9);
    expect(renderPhrase(proposals[1]!.why, TELL_BOTH)).toMatch(/32 mm/);
    expect(renderPhrase(proposals[0]!.sentence, TELL_BOTH)).toBe(
      'Back: shorten 51 mm (2 in) above the waist, tapering to 32 mm (1 1/4 in) at the side seam. Front: shorten 32 mm (1 1/4 in) above the waist',
    );
    for (const p of proposals) expect(p.blocked).toBeUndefined();
    // Taken in order they can be made.
    const after = proposals.reduce((g, p) => applyStep(g, p.step!).garment, PANELS);
    expect(after).not.toBe(PANELS);
  });

  it('puts length before shoulder before width, whatever the order of telling', () => {
    const proposals = observe(
      [
        seen('hip', 'all', 'tight', 20, 0),
        seen('shoulder seam', 'all', 'back', 0, 12),
        seen('waist', 'all', 'high', 10, 10),
      ],
      PANELS,
    );
    expect(proposals.map((p) => p.step?.entry)).toEqual([
      'length-above-waist',
      'forward-shoulder',
      'width-seams',
    ]);
    expect(proposals[1]!.step!.params).toEqual({ neck: 0, tip: 12 });
  });

  it('a shoulder seam that sits forward gives its strip from back to front', () => {
    const [p] = observe([seen('shoulder seam', 'all', 'forward', 3, 10)], BODICE);
    expect(p!.step!.params).toEqual({ neck: -3, tip: -10 });
    expect(renderPhrase(p!.sentence, TELL_BOTH)).toMatch(/10 mm \(3\/8 in\) back at the armhole/);
  });

  it('averages two readings of one line and says so', () => {
    const [p] = observe([seen('waist', 'back', 'low', 20, 10), seen('waist', 'back', 'low', 30, 10)], BODICE);
    expect(p!.step!.params['back']).toBe(-25);
    expect(p!.from).toHaveLength(2);
    expect(renderPhrase(sentences(p!.conflicts), TELL_BOTH)).toMatch(/different amounts .* -25 mm/);
  });

  it('explains opposite readings and alterations that answer one sight twice', () => {
    const [opposite] = observe(
      [seen('waist', 'back', 'low', 20, 0), seen('waist', 'back', 'high', 10, 0)],
      BODICE,
    );
    expect(renderPhrase(sentences(opposite!.conflicts), TELL_BOTH)).toMatch(/opposite/);
    const folds = observe(
      [seen('waist', 'back', 'folds', 12, 0), seen('hip', 'all', 'tight', 30, 0)],
      PANELS,
    );
    expect(folds.map((p) => p.step!.entry)).toEqual(['swayback', 'width-seams']);
    for (const p of folds)
      expect(renderPhrase(sentences(p.conflicts), TELL_BOTH)).toMatch(/hip makes the same folds/);
  });

  it('chooses the bust alteration by the front', () => {
    const bust = seen('bust', 'front', 'drags', 10, 15);
    expect(observe([bust], BODICE)[0]!.step!.entry).toBe('bust-side-dart');
    expect(observe([bust], PANELS)[0]!.step).toMatchObject({
      entry: 'bust-panel',
      params: { width: 15, length: 10 },
    });
  });

  it('lengthens legs on trousers and the skirt below its hip on a skirt, where the hem alone is off', () => {
    const on = (garment: typeof SKIRT) => observe([seen('hem', 'all', 'high', 20, 20)], garment)[0]!;
    expect(on(TROUSERS).step).toMatchObject({ entry: 'inseam', params: { amount: 20 } });
    expect(on(SKIRT).step).toMatchObject({ entry: 'skirt-length', params: { amount: 20, where: 'line' } });
    expect(on(BODICE).step).toMatchObject({ entry: 'length-below-waist', params: { amount: 20 } });
    for (const garment of [TROUSERS, SKIRT]) expect(on(garment).blocked).toBeUndefined();
    const [tight] = observe([seen('hem', 'all', 'tight', 20, 20)], TROUSERS);
    expect(tight!.step).toMatchObject({ entry: 'leg-width', params: { level: 'hem', amount: 20 } });
  });

  it('reads the waist of a skirt or of trousers by its half: seat, abdomen, or the depth to the crotch', () => {
    const ask = (where: Observation['where'], centre: number, side: number, garment: typeof SKIRT) =>
      observe([seen('waist line', where, 'low', centre, side)], garment)[0]!;
    expect(ask('back', 12, 0, SKIRT).step).toMatchObject({ entry: 'seat', params: { amount: 12 } });
    expect(ask('front', 12, 4, SKIRT).step).toMatchObject({ entry: 'abdomen', params: { amount: 8 } });
    expect(ask('back', 15, 15, TROUSERS).step).toMatchObject({
      entry: 'trouser-seat',
      params: { amount: 15 },
    });
    expect(ask('all', 10, 10, TROUSERS).step).toMatchObject({
      entry: 'crotch-depth',
      params: { amount: 10 },
    });
    for (const p of [ask('back', 12, 0, SKIRT), ask('back', 15, 15, TROUSERS), ask('all', 10, 10, TROUSERS)])
      expect(p.blocked).toBeUndefined();
    // A skirt that sits low all round is loose, not short: nothing of length answers it.
    expect(ask('all', 10, 10, SKIRT).step).toBeUndefined();
  });

  it('says what cannot be done here, and drops nothing', () => {
    const proposals = observe(
      [
        seen('crotch', 'back', 'tight', 10, 0),
        seen('pocket', 'front', 'low', 5, 5),
        seen('hem', 'all', 'gapes', 5, 5),
      ],
      SKIRT,
    );
    expect(proposals[0]!.blocked).toMatchObject({ code: 'no-crotch', severity: 'error' });
    expect(proposals.filter((p) => !p.step)).toHaveLength(2);
    expect(renderPhrase(proposals[1]!.why, TELL_BOTH)).toMatch(/can be stated: .*waist line/);
  });
});

describe('where it is seen', () => {
  const params = (...args: Parameters<typeof seen>) => observe([seen(...args)], BODICE)[0]!.step!.params;

  it('a width all round goes to front and back, one seen in front to the front', () => {
    expect(observe([seen('hip', 'all', 'tight', 50, 0)], SKIRT)[0]!.step!.params['front']).toBe(0.5);
    expect(observe([seen('hip', 'front', 'tight', 50, 0)], SKIRT)[0]!.step!.params['front']).toBe(1);
  });

  it('a waist seen at the back takes nothing from the front, unless its side is off too', () => {
    const { side: _, ...back } = seen('waist', 'back', 'low', 25, 0);
    expect(observe([back], PANELS)[0]!.step!.params).toEqual({ back: -25, front: 0, side: 0 });
    // The side seam is the front's as well: the front goes along level, so that its centre stays on the fold.
    expect(params('waist', 'back', 'low', 25, 10)).toEqual({ back: -25, front: -10, side: -10 });
    const [p] = observe([seen('waist', 'back', 'low', 25, 10)], BODICE);
    expect(renderPhrase(sentences(p!.conflicts), TELL_BOTH)).toMatch(/nothing was noted of the centre front/);
  });

  it('one shoulder that is lower, or higher, and one hip that is higher or fuller', () => {
    const step = (...args: Parameters<typeof seen>) => observe([seen(...args)], SKIRT)[0]!.step;
    const shoulder = (direction: 'folds' | 'tight') =>
      observe([seen('shoulder', 'left', direction, 9, 0)], BODICE)[0]!.step;
    expect(shoulder('folds')).toMatchObject({ entry: 'low-shoulder', params: { side: 'left', amount: 9 } });
    expect(shoulder('tight')).toMatchObject({ entry: 'low-shoulder', params: { side: 'left', amount: -9 } });
    expect(step('hip', 'right', 'high', 12, 0)).toMatchObject({
      entry: 'high-hip',
      params: { side: 'right', amount: 12, width: 0 },
    });
    expect(step('hip', 'right', 'tight', 12, 0)).toMatchObject({
      entry: 'high-hip',
      params: { side: 'right', amount: 0, width: 12 },
    });
    const [wide] = observe([seen('hip', 'right', 'tight', 12, 0)], SKIRT);
    expect(renderPhrase(wide!.sentence, TELL_BOTH)).toMatch(/^Right side: hip wider by 12 mm/);
  });

  it('folds at the front of the waist are no swayback: it asks', () => {
    const [p] = observe([seen('waist', 'front', 'folds', 12, 0)], PANELS);
    expect(p!.step).toBeUndefined();
    expect(renderPhrase(p!.why, TELL_BOTH)).toMatch(/abdomen too tight .* or the front too long/);
  });

  it('a note from before places were asked is meant all round where that is usual', () => {
    expect(params('upper arm', 'front', 'tight', 10, 0)).toMatchObject({ amount: 10 });
    expect(observe([seen('shoulder', 'back', 'back', 5, 10)], BODICE)[0]!.step!.params).toEqual({
      neck: 5,
      tip: 10,
    });
  });
});

describe('a note from before', () => {
  // Documents of versions 1 and 2 have both amounts of every note, any place, and lines by their words.
  it('is answered or asked about, whatever it says', () => {
    const places = ['all', 'front', 'back', 'left', 'right'] as const;
    for (const garment of [BODICE, SKIRT, TROUSERS])
      for (const { id, sights } of [...OBSERVABLES, { id: 'lapel', sights: { low: 1 } }])
        for (const direction of Object.keys(sights) as Observation['direction'][])
          for (const where of places) {
            const note = seen(id, where, direction, 8, 8);
            const proposals = observe([note], garment);
            expect(proposals.length).toBeGreaterThan(0);
            for (const p of proposals) expect(p.from).toEqual([note.id]);
          }
  });
});

describe('amounts', () => {
  const note = (line: string, direction: Observation['direction'], amounts: object): Observation => ({
    id: 'o',
    line,
    where: 'all',
    direction,
    ...amounts,
  });

  it('across both halves is not doubled: 20 mm across is 10 mm on each half', () => {
    for (const [line, entry] of [
      ['upper back', 'back-width'],
      ['chest', 'chest-width'],
    ] as const) {
      expect(observe([note(line, 'tight', { centre: 20 })], PANELS)[0]!.step).toMatchObject({
        entry,
        params: { amount: 10 },
      });
      expect(observe([note(line, 'tight', { side: 20 })], PANELS)[0]!.step!.params['amount']).toBe(20);
    }
    const [differ] = observe([note('chest', 'tight', { centre: 20, side: 20 })], PANELS);
    expect(renderPhrase(sentences(differ!.conflicts), TELL_BOTH)).toMatch(/does not come to half/);
  });

  it('either one is enough, and a front that is only too narrow can be noted', () => {
    expect(observe([note('abdomen', 'tight', { side: 20 })], SKIRT)[0]!.step!.params).toEqual({
      amount: 0,
      width: 20,
    });
    expect(observe([note('shoulder', 'back', { side: 9 })], BODICE)[0]!.step!.params).toEqual({
      neck: 0,
      tip: 9,
    });
  });

  it('words alone propose nothing: they ask how much', () => {
    for (const line of OBSERVABLES)
      for (const direction of Object.keys(line.sights) as Observation['direction'][]) {
        const [p] = observe([note(line.id, direction, {})], BODICE);
        expect(p!.step).toBeUndefined();
        expect(renderPhrase(p!.why, TELL_BOTH)).toMatch(/^How much is it: .+\?$/);
      }
  });
});

describe('which way', () => {
  it('raises the bust point of a garment whose bust point lies too low on the body', () => {
    const [p] = observe([seen('bust', 'front', 'low', 12, 0)], BODICE);
    expect(p!.step).toMatchObject({ entry: 'bust-point', params: { up: 12 } });
  });
});
