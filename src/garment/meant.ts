import type { Finding } from './finding.ts';
import type { Fitting, Meant } from './fitting.ts';

/** Errors that somebody may want all the same: the garment can be sewn, and only its maker knows why it is so. Anything else of that weight is a drawing that is broken. */
const ERRORS_OF_CHOICE: ReadonlySet<string> = new Set([
  'too-tight-for-fabric',
  'below-wearing-ease',
  'sleeve-tight',
  'woven-for-knit',
  'opening-too-small',
  'nowhere-to-go',
  'girth-off-target',
  'girth-altered',
  'seam-differs',
  'seam-not-trued',
]);
/** What was guessed is answered by saying what it is. */
const GUESSES: ReadonlySet<string> = new Set(['piece-unsure', 'edge-unsure']);

/** Whether a finding can be answered with "it is meant so". */
export const mayBeMeant = ({ code, severity }: Finding): boolean =>
  !GUESSES.has(code) && (severity !== 'error' || ERRORS_OF_CHOICE.has(code));

/** Whether somebody has still to stop and look at it. */
export const isOpen = ({ severity, answered }: Finding): boolean =>
  severity !== 'note' && answered === undefined;

const PLACES = ['piece', 'edge', 'seam', 'level', 'measure', 'step', 'size'] as const;

/** How far an amount may wander and still be the one that was answered: a twentieth, at most 1 mm. Shares are told to a fiftieth. */
const nearly = (was: number, is: number): boolean =>
  Math.abs(was - is) <= Math.min(1, Math.max(0.02, Math.abs(was) / 20));

/** The amounts a finding speaks of, to a thousandth. */
function amountsOf({ amount, values }: Finding): number[] {
  const all = amount === undefined ? Object.values(values).filter((v) => typeof v === 'number') : [amount];
  return all.filter(Number.isFinite).map((mm) => Math.round(mm * 1000) / 1000);
}

/** What is kept of a finding that is meant so. */
export function meantOf(finding: Finding, reason: string, on: string): Meant {
  const { at: _at, ...where } = finding.where;
  return { code: finding.code, where, amounts: amountsOf(finding), reason, on };
}

/** Whether an answer is about this very finding: of the same kind, at the same place, by nearly the same amounts. */
export function isAbout(meant: Meant, finding: Finding): boolean {
  if (meant.code !== finding.code) return false;
  if (PLACES.some((place) => meant.where[place] !== finding.where[place])) return false;
  const amounts = amountsOf(finding);
  return amounts.length === meant.amounts.length && amounts.every((mm, i) => nearly(meant.amounts[i]!, mm));
}

/** Findings with the answers that were given to them. What has changed since it was answered is asked again. */
export function withAnswers(findings: readonly Finding[], { meant }: Fitting): readonly Finding[] {
  if (!meant || meant.length === 0) return findings;
  return findings.map((finding) => {
    if (!mayBeMeant(finding)) return finding;
    const answer = meant.findLast((one) => isAbout(one, finding));
    return answer ? { ...finding, answered: { reason: answer.reason, on: answer.on } } : finding;
  });
}
