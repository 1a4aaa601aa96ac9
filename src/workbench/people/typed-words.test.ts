import { expect, it } from 'vitest';
import { typedWords } from './typed-words.ts';

it('a unit is said once, whoever said it', () => {
  expect(typedWords('40 1/2', 'in')).toBe('40 1/2 in');
  expect(typedWords('102,9', 'cm')).toBe('102,9 cm');
  for (const typed of ['43.5 cm', '40 ½ in', '40½"', '3’4 1/2”', '43,5cm'])
    expect(typedWords(typed, 'in')).toBe(typed);
  expect(typedWords('24', '°')).toBe('24°');
});
