import { expect, it } from 'vitest';
import { SAMPLES } from '../../samples/index.ts';
import { SAMPLE_CARDS } from './sample-cards.ts';

it('offers every sample pattern there is, in the samples’ own words', () => {
  expect(SAMPLE_CARDS.map(({ id, name, say }) => ({ id, name, about: say }))).toEqual(SAMPLES);
});
