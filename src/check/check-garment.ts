import type { Finding, Garment, LevelPlan, Plan } from '../garment/index.ts';
import { say, levelName } from '../garment/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';
import { girthAt } from './girth.ts';
import type { Girth } from './girth.ts';
import { checkOutlines } from './outline.ts';
import { walkAll, walkFindings } from './walk.ts';

/**
 * Everything that stands between these pieces and the cloth: finished girths against the plan, every seam walked, every outline.
 * `planned` is the garment before the alterations: a girth that was on target there and is not now was changed on purpose.
 * Findings: `girth-off-target`, `girth-altered`, `level-unmeasured`; those of `walkFindings` and `checkOutlines`.
 */
export function checkGarment(garment: Garment, plan: Plan, planned: Garment = garment): readonly Finding[] {
  return [
    ...plan.levels.flatMap((level) => girthFindings(garment, level, planned)),
    ...walkAll(garment).flatMap((walk) => walkFindings(garment, walk)),
    ...checkOutlines(garment),
  ];
}

function girthFindings(garment: Garment, level: LevelPlan, planned: Garment): Finding[] {
  const girth = girthAt(garment, level.level);
  if (!girth) return [];
  const where = { level: level.level };
  const name = levelName(level.level);
  if (girth.missing.length > 0) {
    return [
      {
        code: 'level-unmeasured',
        severity: 'error',
        where: { ...where, piece: girth.missing[0]! },
        message: `The finished ${name} cannot be measured: ${girth.missing.join(', ')} ${girth.missing.length === 1 ? 'has' : 'have'} no ${name} line that crosses the outline.`,
      },
    ];
  }
  const off = girth.girth - level.target;
  if (Math.abs(off) <= FINISHED_MM) return [];
  const before = girthAt(planned, level.level);
  if (before && Math.abs(before.girth - level.target) <= FINISHED_MM) return [altered(level, girth, before)];
  const verdict = `Finished ${name}: the pieces measure ${say(girth.girth)}, wanted ${say(level.target)}, so ${say(Math.abs(off))} too ${off < 0 ? 'small' : 'large'}.`;
  return [
    {
      code: 'girth-off-target',
      severity: 'error',
      where,
      amount: off,
      message: `${verdict} ${reason(level)}`,
    },
  ];
}

function reason(level: LevelPlan): string {
  if (level.edges === 0) {
    return `No seam may move at the ${levelName(level.level)}, so the plan could not set it: use an alteration there, or another size.`;
  }
  return 'The seams that may move could not take the whole change: choose another size at this level, let more seams move, or alter.';
}

function altered(level: LevelPlan, girth: Girth, before: Girth): Finding {
  const by = girth.girth - before.girth;
  const tight = girth.girth < level.body && level.wantedEase >= 0;
  return {
    code: 'girth-altered',
    severity: tight ? 'error' : 'warning',
    where: { level: level.level },
    amount: girth.girth - level.target,
    message: `The alterations make the finished ${levelName(level.level)} ${say(Math.abs(by))} ${by > 0 ? 'larger' : 'smaller'} than planned: ${say(girth.girth)} instead of ${say(level.target)}.${tight ? ` That is less than the body, ${say(level.body)}.` : ''}`,
  };
}
