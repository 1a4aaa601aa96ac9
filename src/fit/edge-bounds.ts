import type { Finding, LevelPlan } from '../garment/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';
import { fitFinding } from './words-table.ts';

/** A change per cut edge beyond this disturbs the line of the seam: 10 mm, 3/8 in (formulas, "Spreading a residual"). mm */
const EDGE_CHANGE = 10;

/** Rounding of inches is not a reason to warn. mm */
const HAIR = 0.01;

/**
 * What is wrong with the change at the cut edges of a level: over 10 mm each, more than the allowance holds, or nowhere to go.
 * @param pieces whether pieces are known @param fromAllowance width of allowance growth must come out of, if so meant
 */
export function edgeFindings(
  plan: LevelPlan,
  pieces: boolean,
  fromAllowance: number | undefined,
): readonly Finding[] {
  const { level } = plan;
  const where = { level };
  if (plan.edges === 0) {
    if (!pieces || Math.abs(plan.residual) <= FINISHED_MM) return [];
    const { residual } = plan;
    return [
      fitFinding(
        'nowhere-to-go',
        residual > 0 ? 'error' : 'warning',
        where,
        { level, residual },
        { amount: residual },
      ),
    ];
  }
  const changes = plan.groups.map((g) => g.each);
  const largest = changes.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  const most = Math.max(...changes);
  const found: Finding[] = [];
  if (Math.abs(largest) > EDGE_CHANGE + HAIR) {
    const values = { level, change: largest, most: EDGE_CHANGE };
    found.push(fitFinding('edge-change-large', 'warning', where, values, { amount: largest }));
  }
  if (fromAllowance !== undefined && most > fromAllowance + HAIR) {
    const values = { level, wanted: most, allowance: fromAllowance };
    found.push(fitFinding('allowance-short', 'error', where, values, { amount: most - fromAllowance }));
  }
  return found;
}
