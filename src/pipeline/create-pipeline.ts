import { blend, shiftForPlan } from '../alter/index.ts';
import { checkGarment, walkAll } from '../check/index.ts';
import {
  garmentAtSize,
  withAnswers,
  type Finding,
  type Fitting,
  type Garment,
  type Pattern,
  type Plan,
  type Step,
} from '../garment/index.ts';
import { bustAlteredBy, doStep, girthsOf, type Made, type StepResult } from './make.ts';
import { createPlanner, type PlanFor } from './plan-input.ts';
import { withRemedies } from './remedies.ts';
import { remember } from './remember.ts';

/** What one session computes with: its results are kept by identity of what they were made from, for itself alone. */
export interface Pipeline {
  /**
   * The whole way from a fitting to checked pieces: measure the nest, plan, blend, spread the residual, take the steps in order, check.
   * Where the upper bust chose the size, what a bust alteration among the steps gives is not put on the seams as well: the girth is met once.
   * Same fitting, same answer; a changed step costs only itself and what follows it.
   */
  readonly make: (fitting: Fitting) => Made;
  /** The plan alone, for a body and a pattern that are no fitting yet. */
  readonly planFor: PlanFor;
}

/** So many garments, and so many results of a step on each, are kept: the ones a hand goes back and forth between. */
const KEPT = 4;

interface Drawn {
  readonly plan: Plan;
  readonly blended: Garment;
  readonly planned: Garment;
  readonly findings: readonly Finding[];
  readonly reference: Garment;
  readonly steps: readonly StepResult[];
}

/**
 * A pipeline with memory of its own. One for each session (a command, a page's worker, a pupil at a shared server): what one session
 * makes neither pushes another's results out nor is found by it, and all of it goes when the session does. It keeps the last few
 * results of each kind and no more, however long it lives.
 */
export function createPipeline(): Pipeline {
  const planFor = createPlanner();
  const takeStep = rememberSteps();
  const sameGarment = rememberGarments();
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
  const checked = remember((garment: Garment, plan: Plan, planned: Garment) => ({
    seams: walkAll(garment),
    findings: checkGarment(garment, plan, planned),
    girths: girthsOf(garment, plan),
  }));

  /** Planned, drawn and altered, with so much of the bust left to the alterations. */
  const drawAll = ({ body, pattern, fabric, choices, steps }: Fitting, bustAltered?: number): Drawn => {
    const plan = planFor(body, pattern, fabric, choices, bustAltered);
    const drawn = draw(pattern, plan);
    const size = Math.min(pattern.chart.sizes.length - 1, Math.max(0, Math.round(plan.base.sizeIndex)));
    const reference = referenceOf(pattern, size);
    const taken: StepResult[] = [];
    for (const step of steps) {
      taken.push(takeStep(taken.at(-1)?.after ?? drawn.planned, step, reference));
    }
    return { ...drawn, plan, reference, steps: taken };
  };

  const make = (fitting: Fitting): Made => {
    const first = drawAll(fitting);
    const altered = bustAlteredBy(first.plan, first.steps);
    const drawn = altered ? drawAll(fitting, altered) : first;
    const { plan, blended, planned, reference, steps, findings: drawing } = drawn;
    const garment = steps.at(-1)?.after ?? planned;
    const { seams, findings, girths } = checked(garment, plan, planned);
    const all = [...plan.findings, ...drawing, ...steps.flatMap((s) => s.findings), ...findings];
    return {
      plan,
      blended,
      planned,
      garment,
      steps,
      girths,
      seams,
      findings: withAnswers(
        withRemedies(all, { fitting, plan, planned, garment, steps, reference }),
        fitting,
      ),
    };
  };
  return { make, planFor };
}

/** A garment of the very same pieces as a recent one is that one, so that a new plan that draws nothing new redoes no step. */
function rememberGarments(): (garment: Garment) => Garment {
  const recent: Garment[] = [];
  return (garment) => {
    const known = recent.find(
      (g) =>
        g.seams === garment.seams &&
        g.pieces.length === garment.pieces.length &&
        g.pieces.every((p, i) => p === garment.pieces[i]),
    );
    if (known) return known;
    recent.unshift(garment);
    if (recent.length > KEPT) recent.pop();
    return garment;
  };
}

/** One step on one garment, kept with the garment: changing a step redoes it and what comes after, nothing before. */
function rememberSteps(): (before: Garment, step: Step, reference: Garment) => StepResult {
  const stepOn = new WeakMap<Garment, { step: Step; reference: Garment; result: StepResult }[]>();
  return (before, step, reference) => {
    let known = stepOn.get(before);
    if (!known) stepOn.set(before, (known = []));
    const had = known.find((k) => k.step === step && k.reference === reference);
    if (had) return had.result;
    const result = doStep(before, step, reference);
    known.unshift({ step, reference, result });
    if (known.length > KEPT) known.pop();
    return result;
  };
}

/** One fitting made by itself, nothing kept. Who makes more than one of a person keeps a pipeline. */
export const make = (fitting: Fitting): Made => createPipeline().make(fitting);
