import { describe, expect, it } from 'vitest';
import type { Body, Fitting, Step } from '../garment/index.ts';
import { CAST, sample } from '../samples/index.ts';
import { createPipeline, make, newFitting } from './index.ts';

const SLEEVE: Step = { id: 's', kind: 'alter', entry: 'sleeve-length', params: { above: 8, below: 0 } };
const bodice = sample('stage-bodice');
/** A fitting of the first of the cast whose waist is `more` mm larger; the pattern is the very same object in all of them. */
function fittingOf(more = 0): Fitting {
  const waist = CAST[0]!.readings['waist-girth']![0]!.value;
  const body: Body = {
    ...CAST[0]!,
    readings: { ...CAST[0]!.readings, 'waist-girth': [{ value: waist + more }] },
  };
  return { ...newFitting({ body, pattern: bodice, on: '2026-01-31' }), steps: [SLEEVE] };
}

describe('two sessions', () => {
  it('do not find one another’s results, though what they find is equal', () => {
    const [mine, yours] = [createPipeline(), createPipeline()];
    const fitting = fittingOf();
    const [a, b] = [mine.make(fitting), yours.make(fitting)];
    expect(b).toEqual(a);
    expect(b.plan).not.toBe(a.plan);
    expect(b.planned).not.toBe(a.planned);
    expect(b.steps[0]).not.toBe(a.steps[0]);
    expect(b.garment).not.toBe(a.garment);
    expect(b.seams).not.toBe(a.seams);
  });

  it('do not push one another’s results out, however much one of them makes', () => {
    const [mine, yours] = [createPipeline(), createPipeline()];
    const fitting = fittingOf();
    const before = mine.make(fitting);
    for (let pupil = 1; pupil <= 30; pupil++) yours.make(fittingOf(pupil));
    const after = mine.make(fitting);
    expect(after.plan).toBe(before.plan);
    expect(after.garment).toBe(before.garment);
    expect(after.steps[0]).toBe(before.steps[0]);
    expect(after.seams).toBe(before.seams);
  });

  it('are what a fitting made by itself has: nothing is kept', () => {
    const fitting = fittingOf();
    expect(make(fitting)).toEqual(make(fitting));
    expect(make(fitting).plan).not.toBe(make(fitting).plan);
  });
});

describe('what one session keeps', () => {
  it('is the last few results of each kind, and no more', () => {
    const pipeline = createPipeline();
    const fitting = fittingOf();
    const first = pipeline.make(fitting);
    for (let more = 1; more <= 3; more++) pipeline.make(fittingOf(more));
    expect(pipeline.make(fitting).plan).toBe(first.plan);
    // A plan is kept for every body, choice and amount altered; eight of each kind (remember.ts).
    for (let more = 1; more <= 20; more++) pipeline.make(fittingOf(more));
    const again = pipeline.make(fitting);
    expect(again.plan).not.toBe(first.plan);
    expect(again.steps[0]).not.toBe(first.steps[0]);
    expect(again).toEqual(first);
  });
});
