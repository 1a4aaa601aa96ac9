import { useCallback, useLayoutEffect, useRef } from 'react';
import { boxAround, type Box } from '../../geometry/index.ts';
import type { Grip } from '../worker/grips.ts';
import type { Slot } from '../table/arrange.ts';

/**
 * Brings the pieces of an alteration near when it is opened, so that its threads can be told apart and taken hold of; once, for then
 * the view is the hand's. The threads may be found late: a hand that moved the view before then has it already.
 * Returns what to do when a hand moves the view.
 */
export function useApproach(
  step: string | null,
  grips: readonly Grip[],
  slots: ReadonlyMap<string, Slot>,
  goTo: (there: { box: Box } | null) => void,
): () => void {
  const near = useRef<string | null>(null);
  // With the threads, not a picture after them: nobody reaches for one that then goes elsewhere.
  useLayoutEffect(() => {
    if (step === null) near.current = null;
    if (step === null || grips.length === 0 || near.current === step) return;
    near.current = step;
    const boxes = grips.flatMap((g) => slots.get(g.piece)?.box ?? []);
    if (boxes.length > 0) goTo({ box: boxAround(boxes) });
  }, [step, grips, slots, goTo]);
  return useCallback(() => {
    near.current = step;
    // Also a wish on its way, which the view has not followed yet.
    goTo(null);
  }, [step, goTo]);
}
