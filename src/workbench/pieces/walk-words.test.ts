import { expect, it } from 'vitest';
import { sample } from '../../samples/index.ts';
import { garmentAtSize, notchName } from '../../garment/index.ts';
import { walkAll } from '../../check/index.ts';
import { meantWords } from './walk-words.ts';

const bodice = garmentAtSize(sample('stage-bodice'), 2);
const walk = (id: string) => walkAll(bodice).find((w) => w.seam.id === id)!;

it('says what ease is meant, so that two unlike lengths that are right are not a riddle', () => {
  const front = walk('princess-front');
  // The side is longer, and yet nothing is off: the draft asks for 2 to 6 mm of ease over the bust.
  expect(front.a - front.b).toBeGreaterThan(2);
  expect(front.difference).toBe(0);
  expect(meantWords(front, 'cm')).toBe(
    'Ease meant on the resting side: 0.2 cm to 0.6 cm. Off by counts only what lies beyond that.',
  );
  expect(meantWords(front, 'in')).toMatch(/^Ease meant on the resting side: 1\/16 in to 1\/4 in\./);
  expect(meantWords(walk('side'), 'in')).toBeNull();
});

it('calls notches by plain words', () => {
  const names = walk('princess-front').notches.map((n) => notchName(n.id));
  expect(names).toEqual(['high front panel', 'low front panel']);
});
