import { planFit } from '../../fit/index.ts';
import { blend, shiftForPlan } from '../../alter/index.ts';
import { girthAt, walkAll, walkFindings, measureNest } from '../../check/index.ts';
import type { Fitting } from '../../garment/index.ts';
// TEMPORARY until pipeline lands
export function make(fitting: Fitting) {
  const { pattern: p } = fitting;
  const plan = planFit({ body: fitting.body, chart: p.chart, fabric: fitting.fabric, choices: fitting.choices, cloth: p.cloth, garment: p.garment, measured: measureNest(p) as never, ...(p.endsAt ? { endsAt: p.endsAt } : {}) });
  const blended = blend(p, { base: plan.base.sizeIndex, levels: Object.fromEntries(plan.levels.map((l) => [l.level, l.sizeIndex])) });
  const shifted = shiftForPlan(blended.garment, plan);
  const garment = shifted.garment;
  const seams = walkAll(garment);
  return { plan, blended: shifted.garment, garment, steps: [] as never[], girths: p.levels.map((l) => girthAt(garment, l.level)).filter((g) => g !== null), seams, findings: [...plan.findings, ...blended.findings, ...shifted.findings, ...seams.flatMap((w) => walkFindings(garment, w))] };
}
