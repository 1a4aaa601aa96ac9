import { useEffect, useRef, useState } from 'react';
import type { Fitting } from '../../garment/index.ts';
import { askOf, bench as worker } from '../worker/bench.ts';
import type { Grip } from '../worker/grips.ts';
import type { Slope } from '../worker/slopes.ts';

export interface Held {
  readonly grips: readonly Grip[];
  readonly slopes: readonly Slope[];
}
const NONE: Held = { grips: [], slopes: [] };
/** The hand must rest so long before the threads are looked for anew: while it moves, the worker is for the garment alone. ms. */
const REST_MS = 180;

/** The threads of the alteration in hand and how lines move with them; found anew when the hand rests, at once for another alteration. */
export function useGrips(kept: Fitting, step: string | null): Held {
  const [held, setHeld] = useState<Held>(NONE);
  const last = useRef<string | null>(null);
  useEffect(() => {
    let wanted = true;
    const fresh = last.current !== step;
    last.current = step;
    if (fresh) setHeld(NONE);
    if (!step) return undefined;
    const timer = setTimeout(
      () =>
        void worker.call('grips', { ask: askOf(kept), step }).then(
          (found) => wanted && setHeld(found),
          // The garment itself could not be made: that is said where it is shown.
          () => wanted && setHeld(NONE),
        ),
      fresh ? 0 : REST_MS,
    );
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [kept, step]);
  return held;
}
