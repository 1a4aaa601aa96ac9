import type { Fold, Nap } from '../../garment/index.ts';
import { seeded } from '../search/random.ts';
import type { CuttingPiece, LayJob } from './lay-job.ts';
import type { Ring } from '../../geometry/index.ts';

/** A wavy closed outline, star-shaped about its middle, so that it never crosses itself. */
function blob(next: () => number, w: number, h: number): Ring {
  const n = 5 + Math.floor(next() * 14);
  return Array.from({ length: n }, (_, i) => {
    const a = ((i + 0.6 * next()) / n) * 2 * Math.PI;
    const r = 0.45 + 0.55 * next();
    return { x: w * (1 + r * Math.cos(a)) * 0.5, y: h * (1 + r * Math.sin(a)) * 0.5 };
  });
}

/** Half of a symmetric piece, its straight fold edge at x = 0 running down (the outline is counter-clockwise). */
function halfPiece(next: () => number, w: number, h: number): { outline: Ring; fold: CuttingPiece['fold'] } {
  const right = [0.1, 0.3, 0.5, 0.7, 0.9].map((t) => ({ x: w * (0.4 + 0.6 * next()), y: h * t }));
  const top = { x: 0, y: h };
  const bottom = { x: 0, y: 0 };
  return { outline: [bottom, ...right, top], fold: [top, bottom] };
}

/** A small invented job for property tests: any fold, nap, gap, flaws, repeats, from one seed. */
export function randomJob(seed: number): LayJob {
  const r = seeded(seed);
  const pick = <T>(of: readonly T[]): T => of[r.below(of.length)]!;
  const fold = pick<Fold>(['none', 'lengthwise', 'crosswise', 'partial', 'double']);
  const nap = pick<Nap>(['one-way', 'two-way', 'free']);
  const width = 900 + 700 * r.next();
  const count = 2 + r.below(4);
  const pieces = Array.from({ length: count }, (_, k): CuttingPiece => {
    const w = 60 + 140 * r.next();
    const h = 80 + 160 * r.next();
    const folded = r.next() < 0.3;
    const bias = !folded && r.next() < 0.15;
    const half = folded ? halfPiece(r.next, w, h) : null;
    const mirrored = !folded && r.next() < 0.6;
    return {
      piece: `p${k}`,
      name: `Piece ${k}`,
      number: k + 1,
      cloth: 'shell',
      outline: half ? half.outline : blob(r.next, w, h),
      count: mirrored ? 2 * (1 + r.below(2)) : 1 + r.below(2),
      mirrored,
      ...(half?.fold ? { fold: half.fold } : {}),
      grain: bias
        ? [
            { x: 0, y: 0 },
            { x: 50, y: 50 },
          ]
        : [
            { x: 0, y: 0 },
            { x: 0, y: 100 },
          ],
      ...(r.next() < 0.2 ? { phase: { along: 10, across: 5 } } : {}),
    };
  });
  const flawed = fold !== 'crosswise' && r.next() < 0.3;
  const fx = 200 * r.next();
  const fy = width * (0.2 + 0.5 * r.next());
  return {
    cloth: 'shell',
    width,
    selvage: 12.7,
    fold,
    nap,
    gap: pick([0, 3, 6]),
    pieces,
    flaws: flawed
      ? [
          [
            { x: fx, y: fy },
            { x: fx + 40, y: fy },
            { x: fx + 40, y: fy + 25 },
            { x: fx, y: fy + 30 },
          ],
        ]
      : [],
    ...(r.next() < 0.25 ? { repeat: { along: 32 } } : {}),
    pins: [],
  };
}
