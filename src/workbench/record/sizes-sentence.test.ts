import { describe, expect, it } from 'vitest';
import { make, newFitting } from '../../pipeline/index.ts';
import { CAST, sample } from '../../samples/index.ts';
import { sizesSentence } from './sizes-sentence.ts';

function sentence(pattern: string, sizes: Record<string, string>, rename: (label: string) => string): string {
  const own = sample(pattern);
  const called = {
    ...own,
    chart: { ...own.chart, sizes: own.chart.sizes.map((s) => ({ ...s, label: rename(s.label) })) },
  };
  const f = newFitting({ body: CAST[0]!, pattern: called, on: '2026-01-01', id: 's', title: 'S' });
  const { plan } = make(f);
  return sizesSentence(
    {
      ...plan,
      base: { ...plan.base, size: sizes['base']! },
      levels: plan.levels.map((l) => ({ ...l, size: sizes[l.level] ?? sizes['base']! })),
    },
    called,
  );
}

describe('the sizes as a sentence', () => {
  const [small, large] = [sample('stage-bodice').chart.sizes[1]!, sample('stage-bodice').chart.sizes[2]!];
  it('names each size once with all its places, and does not say “size” before a label that says what it is', () => {
    const said = sentence('stage-bodice', { base: small.id, waist: large.id }, (label) => label);
    expect(said).toMatch(
      new RegExp(`^${small.label} at neck, shoulder, armhole(,| and).*; ${large.label} at waist\\.$`),
    );
    expect(said).not.toMatch(/size/i);
  });
  it('says “Size” before a bare number', () => {
    const said = sentence('stage-bodice', { base: small.id }, (label) => label.replaceAll(/\D/g, ''));
    expect(said).toMatch(/^Size \d+ at neck, shoulder, armhole/);
  });
  it('does not speak of the neck of a skirt', () => {
    const [first] = sample('a-line-skirt').chart.sizes;
    expect(sentence('a-line-skirt', { base: first!.id }, (label) => label)).not.toMatch(/neck|armhole/);
  });
});
