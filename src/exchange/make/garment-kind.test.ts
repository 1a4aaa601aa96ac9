// Truth: what fixtures/role-drawings/make.py says each of its garments is. Left out: a shirt, which is no kind of ours, and two whose pieces
// do not show it: a jacket without a word on it (taken for a top) and a hip-long bodice (a top).
import { renderPhrase, TELL_CM } from '../../garment/index.ts';
import { expect, it } from 'vitest';
import { readRoleDrawing } from '../role-drawings.test-case.ts';
import { guessGarment } from './garment-kind.ts';

/** Kinds of ours for what else the drafter calls them. */
const OURS: Readonly<Record<string, string>> = { leggings: 'trousers', dungarees: 'trousers' };

it.each([
  'yoke-skirt',
  'panel-dress',
  'raglan-top',
  'band-trousers',
  'leggings',
  'dungarees',
  'hooded-top',
  'wrap-dress',
  'kimono-tee',
])('%s is taken for what it is, and why is said', async (name) => {
  const { proposal, truth } = await readRoleDrawing(name);
  const { offered, evidence } = guessGarment(proposal);
  expect(offered).toBe(OURS[truth.garment] ?? truth.garment);
  expect(
    proposal.pieces.some((piece) => renderPhrase(evidence, TELL_CM).startsWith(`“${piece.name}” `)),
  ).toBe(true);
});
