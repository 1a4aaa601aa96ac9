import { describe, expect, it } from 'vitest';
import { isProgression } from './progression.ts';

describe('names of sizes', () => {
  it.each(['34 36 38', '92 98 104 110', '1 2 3', 'XS S M L', 'XL L M', 'L XL 2XL', '12 10 8'])(
    '%s go by equal steps',
    (names) => {
      expect(isProgression(names.split(' '))).toBe(true);
    },
  );

  it.each(['34', '34 36 40', '34 34', 'S L', 'S M 40', '10 50', 'S 8'])('%s do not', (names) => {
    expect(isProgression(names.split(' '))).toBe(false);
  });
});
