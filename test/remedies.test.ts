// Remedies taken one by one come to an end, and make nothing that they could have spared.
import { describe, expect, it } from 'vitest';
import { renderPhrase, TELL_CM, type Body, type Finding, type Fitting } from '../src/garment/index.ts';
import { isMissing, measure } from '../src/measure/index.ts';
import { createPipeline, newFitting, stepsAdded, type Made } from '../src/pipeline/index.ts';
import { SAMPLES, sample } from '../src/samples/index.ts';
import { randomBodies } from './random-body.ts';

const { make } = createPipeline();

const begun = (body: Body, pattern: string): Fitting => ({
  ...newFitting({ body, pattern: sample(pattern), on: '2026-01-31' }),
  steps: [{ id: 'true', kind: 'true' }],
});

const offered = ({ findings }: Made): readonly Finding[] => findings.filter((f) => f.remedy !== undefined);

/** One remedy taken, as the button takes it: every step under a name of its own. */
const taken = (fitting: Fitting, { remedy }: Finding): Fitting =>
  stepsAdded(
    fitting,
    remedy!.steps.map((step, i) => ({ ...step, id: `taken-${fitting.steps.length}-${i}` })),
  );

/** So many acts settle whatever can be settled; more is a circle. */
const MOST_ACTS = 30;

/** The fitting when nothing more is offered, and what was taken on the way, the last first. */
function settled(
  fitting: Fitting,
  choose: (all: readonly Finding[]) => Finding,
): { made: Made; acts: string[] } {
  const acts: string[] = [];
  let now = fitting;
  for (;;) {
    const made = make(now);
    const open = offered(made);
    if (open.length === 0 || acts.length === MOST_ACTS) return { made, acts };
    const next = choose(open);
    acts.unshift(`${next.code}: ${renderPhrase(next.remedy!.say, TELL_CM)}`);
    now = taken(now, next);
  }
}

const IN = 25.4;
/** A fuller bust than the upper bust's size, long in front and at the back. */
const FULLER: Body = {
  id: 'fuller',
  name: 'Bo',
  wearer: 'woman',
  show: 'in',
  waist: 'natural',
  readings: {
    'bust-girth': [{ value: 38.5 * IN }],
    'upper-bust-girth': [{ value: 36.25 * IN }],
    'waist-girth': [{ value: 34 * IN }],
    'hip-girth': [{ value: 41.875 * IN }],
    'back-waist-length': [{ value: 15.375 * IN }],
    'front-waist-length': [{ value: 17.125 * IN }],
  },
};

/** From neck to waist in the middle, mm. */
function middle({ garment }: Pick<Made, 'garment'>, half: 'front' | 'back'): number {
  const found = measure(garment, { is: 'length', role: 'centre', half, as: 'along', above: 'waist' });
  if (isMissing(found)) throw new Error('no centre line');
  return found.left;
}

describe('the remedies of a fuller and longer body', () => {
  const fitting = begun(FULLER, 'stage-bodice');
  const before = make(fitting);
  const wanted = (measure: string): number =>
    before.plan.lengths.find((l) => l.measure === measure)!.residual;

  it.each(['length-differs', 'bust-fuller'])('give each length once, %s taken first', (first) => {
    const { made } = settled(fitting, (open) => open.find((f) => f.code === first) ?? open[0]!);
    expect(middle(made, 'front') - middle(before, 'front')).toBeWithinMm(wanted('front-waist-length'), 0.2);
    expect(middle(made, 'back') - middle(before, 'back')).toBeWithinMm(wanted('back-waist-length'), 0.2);
  });

  it('are made in two goes where one would be beyond a limit', () => {
    const bust = before.findings.find((f) => f.code === 'bust-fuller')!;
    expect(bust.remedy!.steps.map((s) => s.kind)).toEqual(['alter', 'alter', 'true']);
    const { made } = settled(fitting, (open) => open[0]!);
    expect(made.findings.filter((f) => f.code === 'beyond-limit')).toEqual([]);
    // 58 mm all round, by two steps of 14.5 mm on each half.
    const girth = made.girths.find((g) => g.level === 'bust')!;
    expect(girth.girth!).toBeWithinMm(girth.plan!.target, 3);
  });
});

/** Their limits name another size. */
const BY_GIRTH = new Set(['width-seams', 'upper-arm']);

const BODIES = Number(process.env['PINTRUE_REMEDY_BODIES'] ?? 200);
const each = Math.ceil(BODIES / SAMPLES.length);
const PIECED = SAMPLES.filter(({ id }) => sample(id).pieces.length > 0);

describe('whatever is offered on random bodies', () => {
  it.each(PIECED.map(({ id }, i) => [id, i] as const))(
    '%s: comes to an end, and leaves no warning that a remedy could have spared',
    (id, seed) => {
      const { wearer } = sample(id);
      const next = randomBodies(wearer, 700 + seed);
      for (let n = 0; n < each; n++) {
        const body = next();
        const { made, acts } = settled(begun(body, id), (open) => open[n % open.length]!);
        expect(offered(made), `${body.id}: ${acts.join(' ← ')}`).toEqual([]);
        // A girth by the side seams, and an arm, have their limit whichever way they are given; lengths and busts go in goes.
        const beyond = made.findings.filter((f) => f.code === 'beyond-limit');
        expect(beyond.filter((f) => !BY_GIRTH.has(String(f.values['entry'])))).toEqual([]);
      }
    },
    120_000,
  );
});
