import { describe, expect, it } from 'vitest';
import { make, newFitting } from '../../pipeline/index.ts';
import { CAST, sample } from '../../samples/index.ts';
import type { Fitting } from '../../garment/index.ts';
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
const farthest = (a: ReturnType<typeof make>['garment'], b: typeof a): number =>
  Math.max(
    ...a.pieces.flatMap((piece, i) =>
      piece.edges.flatMap((e, k) =>
        e.path.map((p, n) => {
          const q = b.pieces[i]!.edges[k]!.path[n]!;
          return Math.hypot(p.x - q.x, p.y - q.y);
        }),
      ),
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

  it('is the garment itself where no amount differs, and touches nothing that does not move', () => {
    expect(foreseen(base.garment, slopes, 's', shortened(-10), shortened(-10))).toBe(base.garment);
    const guess = foreseen(base.garment, slopes, 's', shortened(-10), shortened(-22));
    const still = base.garment.pieces.filter((p) => !slopes[0]!.pieces.some((m) => m.piece === p.id));
    for (const piece of still) expect(guess.pieces).toContain(piece);
  });
});
