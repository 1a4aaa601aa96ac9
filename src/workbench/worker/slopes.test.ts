import { describe, expect, it } from 'vitest';
import { make, newFitting } from '../../pipeline/index.ts';
import { CAST, sample } from '../../samples/index.ts';
import type { Fitting, Garment } from '../../garment/index.ts';
import { cubicCount, nearestPlace, pathAt } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import { foreseen, slopeBetween } from './slopes.ts';

const own = newFitting({
  body: CAST[0]!,
  pattern: sample('stage-bodice'),
  on: '2026-01-01',
  id: 'foreseen',
  title: 'Foreseen',
});
const shortened = (back: number): Fitting => ({
  ...own,
  steps: [{ id: 's', kind: 'alter', entry: 'length-above-waist', params: { back } }],
});
/** How far a line of the one lies from the same line of the other, both ways. */
const SHARES = Array.from({ length: 33 }, (_, i) => i / 32);
const apart = (a: Path, b: Path): number =>
  Math.max(...SHARES.map((s) => nearestPlace(b, pathAt(a, s)).distance));
const farthest = (a: Garment, b: Garment): number =>
  Math.max(
    ...a.pieces.flatMap((piece, i) =>
      piece.edges.map((e, k) => {
        const path = b.pieces[i]!.edges[k]!.path;
        return Math.max(apart(e.path, path), apart(path, e.path));
      }),
    ),
  );

describe('what is drawn before the reckoning is there', () => {
  const [base, near, far] = [make(shortened(-10)), make(shortened(-14)), make(shortened(-22))];
  const slopes = [{ param: 'back', pieces: slopeBetween(base.garment, near.garment, -4) }];

  it('moves the same pieces as the reckoning, nearly as far', () => {
    const guess = foreseen(base.garment, slopes, 's', shortened(-10), shortened(-22));
    const moved = farthest(base.garment, far.garment);
    expect(moved).toBeGreaterThan(8);
    expect(farthest(guess, far.garment)).toBeLessThan(moved * 0.1);
  });

  it('moves lines that are drawn in more cubics by one amount than by the other', () => {
    const cubics = ({ garment }: typeof base): readonly number[] =>
      garment.pieces.flatMap((p) => p.edges.map((e) => cubicCount(e.path)));
    expect(cubics(far)).not.toEqual(cubics(base));
    const whole = [{ param: 'back', pieces: slopeBetween(base.garment, far.garment, -12) }];
    const guess = foreseen(base.garment, whole, 's', shortened(-10), shortened(-22));
    expect(farthest(guess, far.garment)).toBeLessThan(0.5); // as wide as the line is drawn
  });

  it('is the garment itself where no amount differs, and touches nothing that does not move', () => {
    expect(foreseen(base.garment, slopes, 's', shortened(-10), shortened(-10))).toBe(base.garment);
    const guess = foreseen(base.garment, slopes, 's', shortened(-10), shortened(-22));
    const still = base.garment.pieces.filter((p) => !slopes[0]!.pieces.some((m) => m.piece === p.id));
    for (const piece of still) expect(guess.pieces).toContain(piece);
  });
});
