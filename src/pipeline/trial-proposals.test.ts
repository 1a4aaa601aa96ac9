import { describe, expect, it } from 'vitest';
import { renderPhrase, sentences, TELL_CM } from '../garment/index.ts';
import type { Fitting, Observation } from '../garment/index.ts';
import { demoFittings } from '../samples/index.ts';
import { createPipeline } from './index.ts';
import { trialProposals } from './trial-proposals.ts';

const pipeline = createPipeline();
const told = (fitting: Fitting, note: Partial<Observation> & Pick<Observation, 'line' | 'direction'>) => {
  const seen: Observation = { id: 'o', where: 'all', ...note };
  const [first] = trialProposals({ ...fitting, observations: [seen] }, pipeline);
  expect(first!.step).toBeDefined();
  return renderPhrase(sentences(first!.conflicts), TELL_CM);
};
const titled = (title: string): Fitting => {
  const found = demoFittings().find((f) => f.title.startsWith(title))!;
  return { ...found, steps: [], observations: [] };
};

/** Her waist is 28 mm higher at the back, 27 mm in front, than the pattern's (plan). */
const short = titled('Lamplighter');
/** Her front is 18 mm longer to the waist, her back 11 mm shorter, than the pattern's. */
const long = titled('Widow');

describe('a note against the tape', () => {
  it('is not questioned where the tape says the same', () => {
    expect(told(short, { line: 'waist', direction: 'low', centre: 25 })).not.toMatch(/measured/);
  });

  it('says a length that would be further from the body than it is, and asks which to believe', () => {
    expect(told(long, { line: 'waist', direction: 'low', centre: 10 })).toMatch(
      /front waist length is 1\.8 cm too short now, and would be 2\.8 cm too short after this\. Which is right/,
    );
    expect(told(short, { line: 'waist', direction: 'high', centre: 20 })).toMatch(
      /back waist length is 2\.8 cm too long now, and would be 4\.8 cm too long/,
    );
  });

  it('knows the height of the bust point: hers is 30 mm lower than the pattern has it', () => {
    expect(told(long, { line: 'bust', direction: 'low', where: 'front', centre: 12 })).toMatch(
      /bust height is 3 cm too short now, and would be 4\.2 cm too short after this/,
    );
    expect(told(long, { line: 'bust', direction: 'high', where: 'front', centre: 12 })).not.toMatch(
      /measured/,
    );
  });

  it('says a girth that was right and would not be', () => {
    expect(told(short, { line: 'waist', direction: 'tight', centre: 30 })).toMatch(
      /the waist is right now, and would be 3 cm too wide after this/,
    );
  });

  it('counts what the steps have given already', () => {
    const step = {
      id: 's',
      kind: 'alter',
      entry: 'length-above-waist',
      params: { back: -28, front: -28, side: -28 },
    } as const;
    expect(told({ ...short, steps: [step] }, { line: 'waist', direction: 'low', centre: 8 })).toMatch(
      /back waist length is right now, and would be 7\.9 mm too short/,
    );
  });

  it('lets a neckline be lowered: no waist length changes', () => {
    expect(told(short, { line: 'neckline', direction: 'high', where: 'front', centre: 15 })).toBe('');
  });

  it('a bust alteration is measured with the plan made anew', () => {
    expect(told(long, { line: 'bust', direction: 'tight', where: 'front', side: 10 })).not.toMatch(
      /the bust is/,
    );
  });

  it('asks about a centre that would leave its fold', () => {
    expect(told(short, { line: 'waist', direction: 'low', where: 'front', centre: 25 })).toMatch(
      /A centre on a fold stays straight only if the line is off by as much all across/,
    );
    expect(told(short, { line: 'waist', direction: 'low', where: 'back', centre: 25 })).toBe('');
  });
});
