import { alterationOf, answeredBy, applyStep, observe, type Proposal } from '../alter/index.ts';
import { len, levelWord, measureWord, t } from '../garment/index.ts';
import type { Fitting, Garment, MeasureId, Phrase } from '../garment/index.ts';
import { FINISHED_MM } from '../geometry/index.ts';
import { isMissing, measure, type Quantity } from '../measure/index.ts';
import type { Pipeline } from './create-pipeline.ts';
import { girthsOf, type GirthResult, type Made } from './make.ts';
import { stepsAdded } from './steps-added.ts';

const centre = (half: 'front' | 'back'): Quantity => ({
  is: 'length',
  role: 'centre',
  half,
  as: 'up',
  above: 'waist',
});

/** What of the pieces makes up that length of the body, each so many times: across and spread are measured from the centre, a low bust point is a long way down. */
const ON_PIECES: Readonly<Partial<Record<MeasureId, readonly (readonly [times: number, of: Quantity])[]>>> = {
  'back-waist-length': [[1, centre('back')]],
  'front-waist-length': [[1, centre('front')]],
  'centre-front-length': [[1, centre('front')]],
  'shoulder-length': [[1, { is: 'length', role: 'shoulder', half: 'back', as: 'along' }]],
  'across-back': [[2, { is: 'across', half: 'back' }]],
  'across-front': [[2, { is: 'across', half: 'front' }]],
  'bust-height': [[-1, { is: 'bust-point', as: 'up' }]],
  'bust-spread': [[2, { is: 'bust-point', as: 'out' }]],
  'arm-length': [
    [1, { is: 'cap-height' }],
    [1, { is: 'length', role: 'underarm', half: 'back', as: 'up' }],
  ],
  'hip-depth': [[1, { is: 'length', role: 'side', half: 'back', as: 'up', below: 'waist', above: 'hip' }]],
  'crotch-depth': [[1, { is: 'length', role: 'rise', half: 'front', as: 'up' }]],
  'inside-leg-length': [[1, { is: 'length', role: 'inseam', half: 'front', as: 'up' }]],
};

/** By how much the length changes, mm; of the two sides of the body the one that changes more. Undefined where the garment has no such thing. */
function changed(
  before: Garment,
  after: Garment,
  parts: readonly (readonly [times: number, of: Quantity])[],
): number | undefined {
  let sum = 0;
  for (const [times, of] of parts) {
    const [then, now] = [measure(before, of), measure(after, of)];
    if (isMissing(then) || isMissing(now)) return undefined;
    const [left, right] = [now.left - then.left, now.right - then.right];
    sum += times * (Math.abs(left) > Math.abs(right) ? left : right);
  }
  return sum;
}

/** Off by `now` and by `then` after it, too much being +: worse by the tape, beyond what a finished measure may be off. */
const worse = (now: number, then: number): boolean =>
  Math.abs(then) > FINISHED_MM && Math.abs(then) > Math.abs(now) + FINISHED_MM / 2;

const said = (off: number, more: Phrase, less: Phrase): Phrase =>
  Math.abs(off) <= FINISHED_MM ? t`right` : t`${len(Math.abs(off))} too ${off > 0 ? more : less}`;

const against = (what: Phrase, now: number, then: number, more: Phrase, less: Phrase): Phrase =>
  t`By what was measured the ${what} is ${said(now, more, less)} now, and would be ${said(then, more, less)} after this. Which is right, the measurement or what was seen? Measure it once more before accepting.`;

function girthsAgainst(now: readonly GirthResult[], then: readonly GirthResult[]): Phrase[] {
  return now.flatMap(({ level, girth, plan }) => {
    const after = then.find((g) => g.level === level);
    if (girth === null || !plan || !after?.plan || after.girth === null) return [];
    const [is, becomes] = [girth - plan.target, after.girth - after.plan.target];
    return worse(is, becomes) ? [against(t`${levelWord(level)}`, is, becomes, t`wide`, t`tight`)] : [];
  });
}

/** A lower neckline shortens the centre and makes no waist length shorter. */
const BY_CENTRE: readonly MeasureId[] = ['back-waist-length', 'front-waist-length', 'centre-front-length'];

function lengthsAgainst({ plan, planned, garment }: Made, after: Garment, neck: boolean): Phrase[] {
  return plan.lengths.flatMap((length) => {
    const id = length.measure as MeasureId;
    const of = ON_PIECES[id];
    if (!of || (neck && BY_CENTRE.includes(id))) return [];
    const [sofar, more] = [changed(planned, garment, of), changed(garment, after, of)];
    if (sofar === undefined || more === undefined) return [];
    const is = sofar - length.residual;
    return worse(is, is + more) ? [against(t`${measureWord(id)}`, is, is + more, t`long`, t`short`)] : [];
  });
}

/**
 * What the notes of a trial suggest, judged on the garment before its steps, since the notes were taken on it. What would take a girth or a length further
 * from the body's own reading than it is now says so, and asks which of the two is to be believed.
 */
export function trialProposals(fitting: Fitting, pipeline: Pipeline): readonly Proposal[] {
  const made = pipeline.make(fitting);
  return observe(fitting.observations, made.planned).map((proposal) => {
    const { step, blocked, conflicts } = proposal;
    if (!step || blocked || answeredBy(fitting.steps, proposal)) return proposal;
    const after = applyStep(made.garment, step).garment;
    const group = alterationOf(step.entry)?.group;
    // What a bust alteration gives the seams need not give any more: that is planned anew.
    const girths =
      group === 'bust' ? pipeline.make(stepsAdded(fitting, [step])).girths : girthsOf(after, made.plan);
    const tape = [
      ...girthsAgainst(made.girths, girths),
      ...lengthsAgainst(made, after, group === 'neckline'),
    ];
    return { ...proposal, conflicts: [...conflicts, ...tape] };
  });
}
