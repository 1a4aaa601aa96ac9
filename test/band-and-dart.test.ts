import { describe, expect, it } from 'vitest';
import { garmentAtSize } from '../src/garment/index.ts';
import type { Garment } from '../src/garment/index.ts';
import { pathLength } from '../src/geometry/index.ts';
import { sample } from '../src/samples/index.ts';
import { applyStep } from '../src/alter/index.ts';

// A dart that moves within a waist, or opens in a neckline, leaves the sewn seam as long as it was: the band stays (docs/trade.md 5.16: a moved dart keeps every other length).

const lengthOf = (garment: Garment, piece: string, edge: string): number =>
  pathLength(garment.pieces.find((p) => p.id === piece)!.edges.find((e) => e.id === edge)!.path);

const grew = (
  id: string,
  band: string,
  edge: string,
  entry: string,
  params: Record<string, number | string>,
) => {
  const before = garmentAtSize(sample(id), 3);
  const done = applyStep(before, { id: 's', kind: 'alter', entry, params });
  expect(done.findings.filter((f) => f.severity === 'error')).toEqual([]);
  return lengthOf(done.garment, band, edge) - lengthOf(before, band, edge);
};

describe('a band whose seam a dart was opened in', () => {
  it('is as long as before where a neck dart takes what the neckline gained', () => {
    expect(Math.abs(grew('knit-tee', 'neckband', 'neck', 'round-back', { amount: 4.8 }))).toBeLessThan(0.2);
  });

  it.each([
    ['back', 'dart-centre', 'waist-middle', 0.5],
    ['front', 'dart', 'waist-side', 0.4],
  ])('is as long as before where the dart of the %s is divided at the waist', (piece, dart, edge, at) => {
    const by = grew('a-line-skirt', 'waistband', 'waist', 'dart-split', { piece, dart, edge, at });
    expect(Math.abs(by)).toBeLessThan(0.1);
  });
});
