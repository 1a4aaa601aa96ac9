import { levelName, type Plan } from '../garment/index.ts';

/** The sizes of a plan as written on the pieces: `Size 92, waist 88, high hip 84`; one size alone when all are the same. */
export function sizeWords(plan: Plan): string {
  const other = plan.levels.filter((l) => l.size !== plan.base.size);
  const named = other.map((l) => `${levelName(l.level)} ${l.size}`);
  return [`Size ${plan.base.size}`, ...named].join(', ');
}
