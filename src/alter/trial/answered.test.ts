import { t } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { answeredBy, answering } from './answered.ts';
import type { Proposal } from './observe.ts';

const proposal = (entry: string, ...from: string[]): Proposal => ({
  from,
  step: { id: 's', kind: 'alter', entry, params: {} },
  sentence: t``,
  why: t``,
  conflicts: [],
  warns: [],
});

describe('a proposal that was accepted', () => {
  const crotch = proposal('crotch-depth', 'o1');
  const step = answering({ ...crotch.step!, id: 'kept' }, crotch);

  it('is known by its step, whatever else was done', () => {
    expect(answeredBy([{ id: 'true', kind: 'true' }, step], crotch)?.id).toBe('kept');
  });
  it('is not another alteration for the same observation, nor the same one for another', () => {
    expect(answeredBy([step], proposal('seat', 'o1'))).toBeUndefined();
    expect(answeredBy([step], proposal('crotch-depth', 'o2'))).toBeUndefined();
    expect(answeredBy([step], proposal('crotch-depth', 'o1', 'o2'))).toBeUndefined();
  });
  it('is not an alteration made without a trial', () => {
    expect(answeredBy([crotch.step!], crotch)).toBeUndefined();
  });
});
