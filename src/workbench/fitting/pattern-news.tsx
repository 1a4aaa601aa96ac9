import { lazy, Suspense, useMemo } from 'react';
import { writePattern } from '../../garment/index.ts';
import type { Bench } from '../station/bench.ts';
import { useDoc } from '../store/use-store.ts';

const PatternAsks = lazy(() => import('./pattern-asks.tsx'));

/** What was said or corrected on the pattern's own page since this fitting took its copy; fetched only where there is something. */
export function PatternNews({ bench }: { bench: Bench }) {
  const { pattern } = bench.fitting;
  const kept = useDoc('pattern', pattern.id)?.doc;
  const other = useMemo(
    () => kept !== undefined && kept !== pattern && writePattern(kept) !== writePattern(pattern),
    [kept, pattern],
  );
  return (
    other && (
      <Suspense fallback={null}>
        <PatternAsks bench={bench} />
      </Suspense>
    )
  );
}
