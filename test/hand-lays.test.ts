import { describe, expect, it } from 'vitest';
import { garmentAtSize } from '../src/garment/index.ts';
import { clothNeeds, cuttingPieces, jobFor, proveLay } from '../src/layout/index.ts';
import type { ClothChoice } from '../src/layout/index.ts';
import { sample } from '../src/samples/index.ts';
import { HAND_LAYS, type HandLay } from './hand-lays-table.ts';

/** All fifteen take half a minute of one core. */
const SWEEPS = 15_000;

const piecesOf = ({ sample: id }: HandLay) => {
  const pattern = sample(id);
  return cuttingPieces(garmentAtSize(pattern, Math.floor(pattern.chart.sizes.length / 2)), 'shell');
};
const choiceOf = ({ width }: HandLay): ClothChoice => ({
  cloth: 'shell',
  widths: [width],
  // What the hand tried too.
  folds: ['none', 'lengthwise'],
  nap: 'two-way',
});

describe('lays by hand', () => {
  it('are made of every sample at three widths', () => {
    expect(HAND_LAYS).toHaveLength(15);
    expect(new Set(HAND_LAYS.map((h) => h.sample)).size).toBe(5);
  });
  it.each(HAND_LAYS.map((h) => [h.sample, h.width, h] as const))('%s on %d mm is a true lay', (_s, _w, h) => {
    const lay = { ...h, cloth: 'shell' as const, spread: h.length, density: 0, folded: 0 };
    expect(proveLay(jobFor(piecesOf(h), choiceOf(h), h.width, h.fold), lay)).toEqual([]);
  });
});

describe('the engine against the hand', () => {
  const gains: number[] = [];
  it.each(HAND_LAYS.map((h) => [h.sample, h.width, h] as const))(
    '%s on %d mm needs no more cloth',
    (_s, _w, h) => {
      const { needs } = clothNeeds(piecesOf(h), [choiceOf(h)], { seed: 1, budget: { sweeps: SWEEPS } });
      gains.push(1 - needs[0]!.lay.length / h.length);
      expect(needs[0]!.lay.length).toBeLessThanOrEqual(h.length);
    },
    600_000,
  );
  it('needs 5 % less on average', () => {
    expect(gains).toHaveLength(HAND_LAYS.length);
    expect(gains.reduce((sum, g) => sum + g, 0) / gains.length).toBeGreaterThanOrEqual(0.05);
  });
});
