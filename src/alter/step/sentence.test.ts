import { TELL_BOTH, renderPhrase } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import type { ParamValue } from '../../garment/index.ts';
import { describeStep } from './apply-step.ts';
import { CATALOGUE } from '../catalogue/index.ts';

const said = (entry: string, params: Record<string, ParamValue>): string =>
  renderPhrase(describeStep({ id: 's', kind: 'alter', entry, params }), TELL_BOTH);

describe('the sentence of an alteration', () => {
  it('tells the example of the brief: back shortened by 50, tapering to 32 at the side', () => {
    expect(said('length-above-waist', { back: -50, front: 0, side: -32 })).toBe(
      'Back: shorten 50 mm (1 15/16 in) above the waist, tapering to 32 mm (1 1/4 in) at the side seam. ' +
        'Front: shorten 32 mm (1 1/4 in) above the waist at the side seam, tapering to nothing at the centre',
    );
  });

  it('says the other way round for every amount that can be negative', () => {
    for (const entry of CATALOGUE) {
      for (const param of entry.params) {
        if (param.kind !== 'length' || param.min >= 0) continue;
        const by = Math.min(10, -param.min, param.max);
        expect(said(entry.id, { [param.id]: -by }), `${entry.id} ${param.id}`).not.toBe(
          said(entry.id, { [param.id]: by }),
        );
      }
    }
  });

  it('tells every amount that was stated', () => {
    for (const entry of CATALOGUE) {
      for (const param of entry.params) {
        if (param.kind !== 'length') continue;
        const by = Math.min(17, param.max);
        expect(said(entry.id, { [param.id]: by }), `${entry.id} ${param.id}`).toMatch(
          /17 mm|8\.5 mm|4\.3 mm/,
        );
      }
    }
  });
});
