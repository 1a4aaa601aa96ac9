import { describe, expect, it } from 'vitest';
import { TELL_CM, renderPhrase } from '../../garment/index.ts';
import type { Garment, ParamValue } from '../../garment/index.ts';
import { girthAt } from '../../measure/index.ts';
import { PANELS, SKIRT } from '../drawn/schematic.ts';
import { applyStep } from '../step/apply-step.ts';

const widened = (garment: Garment, params: Record<string, ParamValue>) =>
  applyStep(garment, { id: 's', kind: 'alter', entry: 'width-seams', params });
const sentence = (garment: Garment, params: Record<string, ParamValue>): string =>
  renderPhrase(widened(garment, params).sentence, TELL_CM);

describe('width by the side seams', () => {
  it('counts the cut edges that moved: front and back on the fold have two each', () => {
    expect(sentence(SKIRT, { level: 'hip', total: 40 })).toBe(
      'Side seams: widen the hip by 4 cm all round, 1 cm at each of 4 cut edges',
    );
  });

  it('says what front and back take, each at its own edges (by hand: 40 × 0.75 / 2 and 40 × 0.25 / 2)', () => {
    expect(sentence(SKIRT, { level: 'hip', total: 40, front: 0.75 })).toBe(
      'Side seams: widen the hip by 4 cm all round, 1.5 cm at each of 2 cut edges in front and 5 mm at each of 2 cut edges at the back',
    );
  });

  it("counts two edges where only the back's side seam meets the level, and gives them the whole", () => {
    const backOnly: Garment = {
      ...SKIRT,
      pieces: SKIRT.pieces.map((p) =>
        p.id === 'front'
          ? {
              ...p,
              edges: p.edges.map((e) => ({ ...e, crossings: e.crossings.filter((c) => c.level !== 'hip') })),
            }
          : p,
      ),
    };
    const params = { level: 'hip', total: 40 };
    expect(sentence(backOnly, params)).toBe(
      'Side seams: widen the hip by 4 cm all round, 2 cm at each of 2 cut edges',
    );
    const hip = (g: Garment): number => girthAt(g, 'hip')!.girth;
    expect(hip(widened(backOnly, params).garment) - hip(backOnly)).toBeWithinMm(40, 1e-6);
  });

  it('says that it fell short where the edges are taken for what they are not', () => {
    // As an imported bodice whose panel seams nobody said anything about: every upright edge is called a side.
    const mistaken: Garment = {
      ...PANELS,
      pieces: PANELS.pieces.map((p) => ({
        ...p,
        edges: p.edges.map((e) => (e.role === 'panel' || e.role === 'centre' ? { ...e, role: 'side' } : e)),
      })),
    };
    const found = widened(mistaken, { level: 'bust', total: 40 }).findings.find(
      (f) => f.code === 'not-reached',
    );
    expect(found).toMatchObject({ severity: 'warning', values: { wanted: 40 }, where: { level: 'bust' } });
    expect(found!.values!['got']).toBeLessThan(20);
  });
});
