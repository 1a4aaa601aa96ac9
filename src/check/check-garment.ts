import type { Finding, Garment, LevelPlan, Plan } from '../garment/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';
import { girthAt } from '../measure/index.ts';
import type { Girth } from '../measure/index.ts';
import { checkOutlines } from './outline.ts';
import { walkAll, walkFindings } from './walk.ts';
import { checkRoles } from './unsure.ts';
import { checkFinding } from './words-table.ts';

/**
 * Everything that stands between these pieces and the cloth: finished girths against the plan, every seam walked, every outline.
 * `planned` is the garment before the alterations: a girth that was on target there and is not now was changed on purpose.
 * Findings: `girth-off-target`, `girth-altered`, `level-unmeasured`; those of `walkFindings`, `checkOutlines` and `checkRoles`.
 */
export function checkGarment(garment: Garment, plan: Plan, planned: Garment = garment): readonly Finding[] {
  return [
    ...plan.levels.flatMap((level) => girthFindings(garment, level, planned)),
    ...walkAll(garment).flatMap((walk) => walkFindings(garment, walk)),
    ...checkOutlines(garment),
    ...checkRoles(garment.pieces),
  ];
}

function girthFindings(garment: Garment, level: LevelPlan, planned: Garment): Finding[] {
  const girth = girthAt(garment, level.level);
  if (!girth) return [];
  const where = { level: level.level };
  if (girth.missing.length > 0) {
    return [
      checkFinding(
        'level-unmeasured',
        'error',
        { ...where, piece: girth.missing[0]! },
        { level: level.level, pieces: girth.missing },
      ),
    ];
  }
  const off = girth.girth - level.target;
  if (Math.abs(off) <= FINISHED_MM) return [];
  const before = girthAt(planned, level.level);
  if (before && Math.abs(before.girth - level.target) <= FINISHED_MM) return [altered(level, girth, before)];
  return [
    checkFinding(
      'girth-off-target',
      'error',
      where,
      { level: level.level, girth: girth.girth, target: level.target, movable: level.edges !== 0 },
      { amount: off },
    ),
  ];
}

function altered(level: LevelPlan, girth: Girth, before: Girth): Finding {
  const by = girth.girth - before.girth;
  const tight = girth.girth < level.body && level.wantedEase >= 0;
  return checkFinding(
    'girth-altered',
    tight ? 'error' : 'warning',
    { level: level.level },
    { level: level.level, by, girth: girth.girth, target: level.target, body: tight ? level.body : null },
    { amount: girth.girth - level.target },
  );
}
