import { describe, expect, it } from 'vitest';
import type { Body, Plan, SizeChart } from '../garment/index.ts';
import { PLAIN_DRESS } from './plain-input.test-case.ts';
import { planFit } from './index.ts';

const body: Body = {
  id: 'b',
  name: 'Bo',
  wearer: 'woman',
  show: 'cm',
  waist: 'natural',
  readings: { 'hip-girth': [{ value: 960 }], 'inside-leg-length': [{ value: 780 }] },
};
const chart: SizeChart = {
  sizes: [{ id: '12', label: '12' }],
  waist: 'natural',
  body: { 'hip-girth': [960] },
  finished: { hip: [1040] },
  finishedLengths: { 'inside-leg-length': [720] },
};
const planOf = (more: Partial<SizeChart>): Plan =>
  planFit({ ...PLAIN_DRESS, body, chart: { ...chart, ...more }, garment: 'trousers' });

describe('the inside of a leg', () => {
  // A body's goes to the floor (ISO 8559-1, inside leg length), a pattern's to its hem.
  it('is not compared with a pattern’s that says nothing of the floor; that is told', () => {
    const { lengths, findings } = planOf({});
    expect(lengths).toEqual([]);
    expect(findings).toContainEqual(
      expect.objectContaining({ code: 'floor-and-hem', where: { measure: 'inside-leg-length' } }),
    );
  });

  it('is compared where the pattern gives the leg that it is meant for: what it ends above the floor is its own', () => {
    const { lengths, findings } = planOf({ body: { 'hip-girth': [960], 'inside-leg-length': [770] } });
    // Meant for 770, made 720: 50 above the floor. 780 wants 730.
    expect(lengths[0]).toMatchObject({ body: 780, ease: -50, pattern: 720, residual: 10 });
    expect(findings.map((f) => f.code)).not.toContain('floor-and-hem');
  });
});
