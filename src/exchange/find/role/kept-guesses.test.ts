// How often a piece is looked at anew is counted, not timed.
import { expect, it, vi } from 'vitest';
import { sample } from '../../../samples/index.ts';
import { rolesAsTold } from '../../make/told.ts';
import { patternSheet } from '../../write/sheet.ts';
import { recognise } from '../recognise.ts';
import { guesses } from './guess.ts';

vi.mock('./guess.ts', { spy: true });

const proposal = recognise({ ...patternSheet(sample('knit-tee'), { semantics: false }).drawing, texts: [] });
const front = proposal.pieces.find((piece) => piece.role === 'front')!;
const looked = (act: () => void): string[] => {
  vi.mocked(guesses).mockClear();
  act();
  return vi.mocked(guesses).mock.calls.map(([{ piece }]) => piece.id);
};

it('after an answer only the piece it is about is looked at anew, and what changed its kinds by it', () => {
  const panel = { pieces: { [front.id]: { role: 'side-front' } } } as const;
  const anew = looked(() => rolesAsTold(proposal, panel));
  expect(anew).toContain(front.id);
  expect(anew.length).toBeLessThan(proposal.pieces.length);
  expect(looked(() => rolesAsTold(proposal, panel))).toEqual([]);
});

it('another answer to the same question is another way to see it', () => {
  const roleOf = (role: 'back' | 'yoke') =>
    rolesAsTold(proposal, { pieces: { [front.id]: { role } } }).pieces.find(({ id }) => id === front.id)!
      .role;
  expect(roleOf('back')).toBe('back');
  expect(looked(() => expect(roleOf('yoke')).toBe('yoke'))).toContain(front.id);
});
