import type {
  Finding,
  Fitting,
  Garment,
  Level,
  LevelPlan,
  Pattern,
  Phrase,
  PieceId,
  Plan,
  Step,
} from '../garment/index.ts';
import { garmentAtSize } from '../garment/index.ts';
import { STORED_MM } from '../geometry/index.ts';
import { alterationOf, applyStep, blend, shiftForPlan } from '../alter/index.ts';
import { checkGarment, girthAt, trueGarment, walkAll } from '../check/index.ts';
import type { Change, Girth, Walk } from '../check/index.ts';
import { planFor } from './plan-input.ts';
import { withRemedies } from './remedies.ts';
import { remember } from './remember.ts';

/** One step of the stack as it went. */
export interface StepResult {
  readonly step: Step;
  readonly before: Garment;
  readonly after: Garment;
  /** What was done, in a sewist's words. */
  readonly sentence: Phrase | string;
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

/** The pattern as printed in the size nearest to the base: what its maker meant corners and fullness to be. */
const referenceOf = remember((pattern: Pattern, size: number): Garment => garmentAtSize(pattern, size));

const draw = remember((pattern: Pattern, plan: Plan) => {
  const blended = blend(pattern, {
    base: plan.base.sizeIndex,
    levels: Object.fromEntries(plan.levels.map((l) => [l.level, l.sizeIndex])),
  });
  const planned = shiftForPlan(blended.garment, plan);
  return {
    blended: blended.garment,
    planned: sameGarment(planned.garment),
    findings: [...blended.findings, ...planned.findings],
  };
});

const recent: Garment[] = [];
/** A garment of the very same pieces as a recent one is that one, so that a new plan that draws nothing new redoes no step. */
function sameGarment(garment: Garment): Garment {
  const known = recent.find(
    (g) =>
      g.seams === garment.seams &&
      g.pieces.length === garment.pieces.length &&
      g.pieces.every((p, i) => p === garment.pieces[i]),
  );
  if (known) return known;
  recent.unshift(garment);
  if (recent.length > 4) recent.pop();
  return garment;
}

const stepOn = new WeakMap<Garment, { step: Step; reference: Garment; result: StepResult }[]>();

/** One step on one garment, kept by both: changing a step redoes it and what comes after, nothing before. */
function takeStep(before: Garment, step: Step, reference: Garment): StepResult {
  let known = stepOn.get(before);
  if (!known) stepOn.set(before, (known = []));
  const had = known.find((k) => k.step === step && k.reference === reference);
  if (had) return had.result;
  const result = doStep(before, step, reference);
  known.unshift({ step, reference, result });
  if (known.length > 4) known.pop();
  return result;
}

function doStep(before: Garment, step: Step, reference: Garment): StepResult {
  if (step.off) {
    return { step, before, after: before, sentence: 'Off', touched: [], findings: [], changes: [] };
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

function trueSentence(
  garment: Garment,
  seams: readonly string[] | undefined,
  changes: readonly Change[],
): string {
  const what = seams
    ? `True ${seams.map((id) => `“${garment.seams.find((s) => s.id === id)?.name ?? id}”`).join(', ')}`
    : 'True all seams';
  const count = (kind: Change['kind'], one: string, many: string): string[] => {
    const n = changes.filter((c) => c.kind === kind).length;
    return n === 0 ? [] : [`${n} ${n === 1 ? one : many}`];
  };
  const done = [
    ...count('seam', 'seam equalised', 'seams equalised'),
    ...count('dart', 'dart evened', 'darts evened'),
    ...count('corner', 'corner smoothed', 'corners smoothed'),
    ...count('notch', 'notch re-placed', 'notches re-placed'),
  ];
  return `${what}: ${done.length === 0 ? 'nothing to do' : done.join(', ')}`;
}

const checked = remember((garment: Garment, plan: Plan, planned: Garment) => ({
  seams: walkAll(garment),
  findings: checkGarment(garment, plan, planned),
  girths: girthsOf(garment, plan),
}));

function girthsOf(garment: Garment, plan: Plan): GirthResult[] {
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

interface Drawn {
  readonly plan: Plan;
  readonly blended: Garment;
  readonly planned: Garment;
  readonly findings: readonly Finding[];
  readonly steps: readonly StepResult[];
}

/** Planned, drawn and altered, with so much of the bust left to the alterations. */
function drawAll({ body, pattern, fabric, choices, steps }: Fitting, bustAltered?: number): Drawn {
  const plan = planFor(body, pattern, fabric, choices, bustAltered);
  const drawn = draw(pattern, plan);
  const size = Math.min(pattern.chart.sizes.length - 1, Math.max(0, Math.round(plan.base.sizeIndex)));
  const reference = referenceOf(pattern, size);
  const taken: StepResult[] = [];
  for (const step of steps) {
    taken.push(takeStep(taken.at(-1)?.after ?? drawn.planned, step, reference));
  }
  return { ...drawn, plan, steps: taken };
}

/** mm of bust girth that bust alterations add, to a hundredth; undefined where the plan does not leave the bust to one. */
function bustAlteredBy({ plan, steps }: Drawn): number | undefined {
  if (!plan.findings.some((f) => f.code === 'bust-fuller')) return undefined;
  let sum = 0;
  for (const { step, before, after } of steps) {
    if (step.kind !== 'alter' || alterationOf(step.entry)?.group !== 'bust' || before === after) continue;
    const [was, is] = [girthAt(before, 'bust'), girthAt(after, 'bust')];
    if (was && is && was.missing.length + is.missing.length === 0) sum += is.girth - was.girth;
  }
  return Math.abs(sum) < STORED_MM ? undefined : Math.round(sum / STORED_MM) * STORED_MM;
}

/**
 * The whole way from a fitting to checked pieces: measure the nest, plan, blend, spread the residual, take the steps in order, check.
 * Where the upper bust chose the size, what a bust alteration among the steps gives is not put on the seams as well: the girth is met once.
 * Pure; results are kept by identity of what they were made from, so a changed step costs only itself and what follows it.
 */
export function make(fitting: Fitting): Made {
  const first = drawAll(fitting);
  const altered = bustAlteredBy(first);
  const { plan, blended, planned, steps, findings: drawing } = altered ? drawAll(fitting, altered) : first;
  const garment = steps.at(-1)?.after ?? planned;
  const { seams, findings, girths } = checked(garment, plan, planned);
  return {
    plan,
    blended,
    planned,
    garment,
    steps,
    girths,
    seams,
    findings: withRemedies([...plan.findings, ...drawing, ...steps.flatMap((s) => s.findings), ...findings], {
      fitting,
      plan,
      planned,
      garment,
    }),
  };
}
