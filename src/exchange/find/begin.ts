import { ringStarts } from './rim.ts';
import type { Settled } from './rim.ts';
import { chainBackwards } from './seam-edge.ts';
import { notchesInStep, seamFit } from './seam-score.ts';
import type { SeamFit } from './seam-score.ts';

type Sewn = Settled & { readonly fit: SeamFit };

/** With every seam known, a walk that turned out to be a ring begins where its notches keep step with the other side's. */
export function wellBegun<T extends Sewn>(one: T, taken: readonly T[]): T {
  // What has an underlap begins at its opening.
  if (one.fit.lap) return one;
  const others = taken.filter((other) => other !== one);
  const ways = ringStarts(one.a, others).flatMap((a) =>
    ringStarts(one.b, others).flatMap((b) => [
      { a, b },
      { a, b: chainBackwards(b) },
    ]),
  );
  if (ways.length <= 2) return one;
  const best = ways.reduce<Pick<Settled, 'a' | 'b'> & { step: number }>(
    (top, way) => {
      const step = notchesInStep(way.a, way.b);
      return step > top.step + 1e-6 ? { ...way, step } : top;
    },
    { a: one.a, b: one.b, step: notchesInStep(one.a, one.b) },
  );
  if (best.a === one.a && best.b === one.b) return one;
  return { ...one, a: best.a, b: best.b, fit: { ...seamFit(best.a, best.b), score: one.fit.score } };
}
