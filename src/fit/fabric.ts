import { bodyValue, MM_PER, type Finding } from '../garment/index.ts';
import { HEAD_GIRTH } from './ease-table.ts';
import type { Opening, PlanInput } from './input.ts';
import { passes } from './stretch.ts';
import { fitFinding } from './words-table.ts';

/** Whether the fabric suits what the pattern is drafted for. */
function suits(input: PlanInput): readonly Finding[] {
  const { cloth, fabric } = input;
  if (cloth.kind === 'knit' && fabric.kind === 'woven')
    return [fitFinding('woven-for-knit', 'error', {}, { stretch: cloth.stretch })];
  if (cloth.kind === 'knit' && fabric.stretch === undefined)
    return [fitFinding('stretch-unknown', 'note', {}, { stretch: cloth.stretch })];
  if (cloth.kind === 'knit' && fabric.stretch! < cloth.stretch - 1e-9) {
    const amount = (cloth.stretch - fabric.stretch!) * 100;
    return [
      fitFinding('stretch-short', 'warning', {}, { has: fabric.stretch!, asks: cloth.stretch }, { amount }),
    ];
  }
  if (cloth.kind === 'woven' && fabric.kind === 'knit') return [fitFinding('knit-for-woven', 'note', {}, {})];
  return [];
}

/** Whether the body passes an opening: F (1 + s) must reach the girth that goes through. */
function passesOpening(input: PlanInput, opening: Opening): Finding | null {
  const measured = bodyValue(input.body, opening.passes);
  const assumed = opening.passes === 'head-girth' ? HEAD_GIRTH * MM_PER.in : undefined;
  const girth = measured ?? assumed;
  const where = { level: opening.level, measure: opening.passes };
  const of = { opening: opening.name, measure: opening.passes };
  if (girth === undefined) return fitFinding('opening-unmeasured', 'note', where, of);
  const stretch =
    input.fabric.kind === 'knit'
      ? (input.fabric.stretch ?? (input.cloth.kind === 'knit' ? input.cloth.stretch : 0))
      : 0;
  const short = girth - passes(opening.finished, stretch);
  if (short <= 0) return null;
  return fitFinding(
    'opening-too-small',
    'error',
    where,
    {
      ...of,
      finished: opening.finished,
      stretched: passes(opening.finished, stretch),
      girth,
      usual: measured === undefined,
    },
    { amount: short },
  );
}

/** What there is to say about the fabric and the openings that must pass the body. */
export function fabricFindings(input: PlanInput): readonly Finding[] {
  const openings = (input.openings ?? []).map((o) => passesOpening(input, o)).filter((f) => f !== null);
  return [...suits(input), ...openings];
}
