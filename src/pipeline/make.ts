import { t, called, listOf, countOf } from '../garment/index.ts';
import type { Finding, Garment, Level, LevelPlan, Phrase, PieceId, Plan, Step } from '../garment/index.ts';
import { STORED_MM } from '../geometry/index.ts';
import { alterationOf, applyStep } from '../alter/index.ts';
import { trueGarment } from '../check/index.ts';
import { girthAt } from '../measure/index.ts';
import type { Change, Walk } from '../check/index.ts';
import type { Girth } from '../measure/index.ts';

/** One step of the stack as it went. */
export interface StepResult {
  readonly step: Step;
  readonly before: Garment;
  readonly after: Garment;
  /** What was done, in a sewist's words. */
  readonly sentence: Phrase;
  readonly touched: readonly PieceId[];
  readonly findings: readonly Finding[];
  /** What a truing step changed; empty on alterations. */
  readonly changes: readonly Change[];
}

/** A finished girth beside what was wanted. */
export interface GirthResult {
  readonly level: Level;
  /** From the pieces, mm; null where they cannot be measured. */
  readonly girth: number | null;
  readonly plan: LevelPlan | undefined;
  readonly parts: Girth['parts'];
}

/** Everything that follows from a fitting. Nothing of it is stored in the document. */
export interface Made {
  readonly plan: Plan;
  /** In the planned sizes, before the residual is spread. */
  readonly blended: Garment;
  /** With the residual spread on the seams: where the alterations start. */
  readonly planned: Garment;
  readonly garment: Garment;
  readonly steps: readonly StepResult[];
  readonly girths: readonly GirthResult[];
  readonly seams: readonly Walk[];
  /** Plan, drawing, steps in order, then what checking the result found. */
  readonly findings: readonly Finding[];
}

/** One step on one garment; `reference` is the pattern as printed, in the size nearest to the base. */
export function doStep(before: Garment, step: Step, reference: Garment): StepResult {
  if (step.off) {
    return { step, before, after: before, sentence: t`Off`, touched: [], findings: [], changes: [] };
  }
  if (step.kind === 'alter') {
    const { garment, ...rest } = applyStep(before, step);
    return { step, before, after: garment, ...rest, changes: [] };
  }
  const { garment, findings, changes } = trueGarment(before, {
    seams: step.seams,
    keep: step.keep,
    reference,
  });
  const touched = garment.pieces.filter((p, i) => p !== before.pieces[i]).map((p) => p.id);
  return {
    step,
    before,
    after: garment,
    sentence: trueSentence(before, step.seams, changes),
    touched,
    findings: findings.map((f) => ({ ...f, where: { ...f.where, step: step.id } })),
    changes,
  };
}

/** What truing did, once and often. */
const DONE = {
  seam: [t`seam equalised`, t`seams equalised`],
  dart: [t`dart evened`, t`darts evened`],
  corner: [t`corner smoothed`, t`corners smoothed`],
  notch: [t`notch re-placed`, t`notches re-placed`],
} as const;

function trueSentence(
  garment: Garment,
  seams: readonly string[] | undefined,
  changes: readonly Change[],
): Phrase {
  const name = (id: string): Phrase => t`“${called(garment.seams.find((s) => s.id === id)?.name ?? id)}”`;
  const what = seams ? t`True ${listOf(seams.map(name))}` : t`True all seams`;
  const done = (['seam', 'dart', 'corner', 'notch'] as const).flatMap((kind) => {
    const n = changes.filter((c) => c.kind === kind).length;
    return n === 0 ? [] : [countOf(n, ...DONE[kind])];
  });
  return t`${what}: ${done.length === 0 ? t`nothing to do` : listOf(done)}`;
}

/** The garment's girths beside the plan's. */
export function girthsOf(garment: Garment, plan: Plan): GirthResult[] {
  return garment.levels.flatMap(({ level }) => {
    const girth = girthAt(garment, level);
    if (!girth) return [];
    return [
      {
        level,
        girth: girth.missing.length > 0 ? null : girth.girth,
        plan: plan.levels.find((l) => l.level === level),
        parts: girth.parts,
      },
    ];
  });
}

/** mm of bust girth that bust alterations add, to a hundredth; undefined where the plan does not leave the bust to one. */
export function bustAlteredBy(plan: Plan, steps: readonly StepResult[]): number | undefined {
  if (!plan.findings.some((f) => f.code === 'bust-fuller')) return undefined;
  let sum = 0;
  for (const { step, before, after } of steps) {
    if (step.kind !== 'alter' || alterationOf(step.entry)?.group !== 'bust' || before === after) continue;
    const [was, is] = [girthAt(before, 'bust'), girthAt(after, 'bust')];
    if (was && is && was.missing.length + is.missing.length === 0) sum += is.girth - was.girth;
  }
  return Math.abs(sum) < STORED_MM ? undefined : Math.round(sum / STORED_MM) * STORED_MM;
}
