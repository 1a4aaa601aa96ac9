import { SEAM_WARNING_MM } from '../../geometry/index.ts';
import { isMissing, measure } from '../../measure/index.ts';
import type { Measured, Missing, Quantity } from '../../measure/index.ts';
import type { Finding, Garment } from '../../garment/index.ts';
import type { Promised } from './promised.ts';
import { alterFinding } from '../words/words-table.ts';

/** A promise is kept within this, mm; an angle within so many degrees. */
const KEPT_WITHIN = 0.2;

/** A promise, and what came of it. */
export type Outcome =
  | { readonly promised: Promised; readonly got: number; readonly kept: boolean }
  | { readonly promised: Promised; readonly missing: Missing };

/** The change that is further from what was promised, of the left and the right side. */
function change(before: Measured, after: Measured, by: number): number {
  const [left, right] = [after.left - before.left, after.right - before.right];
  return Math.abs(left - by) >= Math.abs(right - by) ? left : right;
}

/** Measures every promise on the garment before and after. */
export function outcomes(before: Garment, after: Garment, promises: readonly Promised[]): Outcome[] {
  return promises.map((promised): Outcome => {
    const then = measure(before, promised.of);
    if (isMissing(then)) return { promised, missing: then };
    const now = measure(after, promised.of);
    if (isMissing(now)) return { promised, missing: now };
    const got = change(then, now, promised.by);
    return { promised, got, kept: Math.abs(got - promised.by) <= KEPT_WITHIN };
  });
}

/** Where a finding about a quantity points. */
const whereOf = (of: Quantity): Finding['where'] =>
  of.is === 'girth' ? { level: of.level } : of.is === 'dart' || of.is === 'darts' ? { piece: of.piece } : {};

/** Worth knowing, but nothing to stop at: less than what is warned of where two edges of a seam differ. Of an angle all is told alike. */
const isSmall = (of: Quantity, off: number): boolean =>
  !(of.is === 'dart' && of.as === 'angle') && Math.abs(off) < SEAM_WARNING_MM;

/**
 * `not-reached` for what fell short: a warning, or a note where it is small or the entry has said so itself (`told`: of what). `not-measured`, a note, for what could not be measured; where
 * an edge was only to stay as it is and there is none, there is nothing to say.
 */
export function promiseFindings(all: readonly Outcome[], told: readonly Quantity['is'][]): Finding[] {
  return all.flatMap((outcome): Finding[] => {
    const { of, by } = outcome.promised;
    if ('missing' in outcome) {
      if (by === 0 && outcome.missing.missing !== 'level') return [];
      return [alterFinding('not-measured', 'note', whereOf(of), { of, missing: outcome.missing })];
    }
    if (outcome.kept) return [];
    return [
      alterFinding(
        'not-reached',
        told.includes(of.is) || isSmall(of, outcome.got - by) ? 'note' : 'warning',
        whereOf(of),
        { of, wanted: by, got: outcome.got },
        { amount: outcome.got - by },
      ),
    ];
  });
}
