import { say, type Finding, type LevelPlan } from '../garment/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';

/** A change per cut edge beyond this disturbs the line of the seam: 10 mm, 3/8 in (formulas, "Spreading a residual"). mm */
const EDGE_CHANGE = 10;

/** Rounding of inches is not a reason to warn. mm */
const HAIR = 0.01;

/**
 * What is wrong with the change at the cut edges of a level: over 10 mm each, more than the allowance holds, or nowhere to go.
 * @param name the level as said @param pieces whether pieces are known @param fromAllowance width of allowance growth must come out of, if so meant
 */
export function edgeFindings(
  plan: LevelPlan,
  name: string,
  pieces: boolean,
  fromAllowance: number | undefined,
): readonly Finding[] {
  const where = { level: plan.level };
  if (plan.edges === 0) {
    if (!pieces || Math.abs(plan.residual) <= FINISHED_MM) return [];
    return [
      {
        code: 'nowhere-to-go',
        severity: plan.residual > 0 ? 'error' : 'warning',
        where,
        amount: plan.residual,
        message: `At the ${name} ${say(Math.abs(plan.residual))} ${plan.residual > 0 ? 'more is wanted all round' : 'less is wanted all round'}, but no seam there may move. Let a seam move, or choose another size there.`,
      },
    ];
  }
  const changes = plan.shares.length > 0 ? plan.shares.map((s) => s.change) : [plan.perEdge];
  const largest = changes.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  const most = Math.max(...changes);
  const found: Finding[] = [];
  if (Math.abs(largest) > EDGE_CHANGE + HAIR) {
    found.push({
      code: 'edge-change-large',
      severity: 'warning',
      where,
      amount: largest,
      message: `At the ${name} each cut edge would move by up to ${say(Math.abs(largest))}; beyond ${say(EDGE_CHANGE)} a seam loses its line. Let more seams share it, cut the level at another size, or alter inside the piece.`,
    });
  }
  if (fromAllowance !== undefined && most > fromAllowance + HAIR) {
    found.push({
      code: 'allowance-short',
      severity: 'error',
      where,
      amount: most - fromAllowance,
      message: `At the ${name} ${say(most)} per cut edge is wanted from an allowance of ${say(fromAllowance)}: it is not there. Draw a new line before cutting, or piece it out.`,
    });
  }
  return found;
}
