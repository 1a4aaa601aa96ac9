import type { Finding, Severity } from '../../garment/index.ts';

/** What is still to be settled before paper is cut from: nothing when all that remains is worth knowing only, or meant so. */
export function stillOpen(findings: readonly Finding[]): { severity: Severity; words: string } | null {
  const open = findings.filter((f) => !f.answered && f.severity !== 'note');
  if (open.length === 0) return null;
  const errors = open.filter((f) => f.severity === 'error').length;
  const things = open.length === 1 ? 'One thing is' : `${open.length} things are`;
  return errors > 0
    ? {
        severity: 'error',
        words: `${things} still to be settled, and as ${errors === 1 ? 'one of them stands' : `${errors} of them stand`} the pieces cannot be cut.`,
      }
    : { severity: 'warning', words: `${things} still to be settled. Look before you print.` };
}
