import { describe, expect, it } from 'vitest';
import { garmentAtSize } from '../src/garment/index.ts';
import { jobFor, layBest, proveLay } from '../src/layout/index.ts';
import type { LayJob } from '../src/layout/index.ts';
import { cuttingPieces } from '../src/pipeline/index.ts';
import { sample } from '../src/samples/index.ts';
import { HAND_LAYS, type HandLay } from './hand-lays-table.ts';

const FULL = process.env['PINTRUE_FULL'] === '1';
/** All fifteen take several minutes; by default those that are quick. */
const QUICK = new Set(['knit-tee/1150', 'chorus-smock/1150', 'chorus-smock/1500']);
const SWEEPS = FULL ? 3000 : 1500;

function jobOf({ sample: id, width }: HandLay, fold: LayJob['fold']): LayJob {
  const pattern = sample(id);
  const garment = garmentAtSize(pattern, Math.floor(pattern.chart.sizes.length / 2));
  const choice = { cloth: 'shell', widths: [], folds: [], nap: 'two-way' } as const;
  return jobFor(cuttingPieces(garment, 'shell'), choice, width, fold);
}

describe('lays by hand', () => {
  it('are made of every sample at three widths', () => {
    expect(HAND_LAYS).toHaveLength(15);
    expect(new Set(HAND_LAYS.map((h) => h.sample)).size).toBe(5);
  });
  it.each(HAND_LAYS.map((h) => [h.sample, h.width, h] as const))('%s on %d mm is a true lay', (_s, _w, h) => {
    const lay = { ...h, cloth: 'shell' as const, spread: h.length, density: 0, folded: 0 };
    expect(proveLay(jobOf(h, h.fold), lay)).toEqual([]);
  });
});

describe('the engine against the hand', () => {
  const tried = HAND_LAYS.filter((h) => FULL || QUICK.has(`${h.sample}/${h.width}`));
  it.each(tried.map((h) => [h.sample, h.width, h] as const))(
    '%s on %d mm needs no more cloth',
    (_s, _w, h) => {
      const lay = layBest(jobOf(h, h.fold), { seed: 1, budget: { sweeps: SWEEPS } })!;
      expect(lay.length).toBeLessThanOrEqual(h.length);
    },
    600_000,
  );
});
