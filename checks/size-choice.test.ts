import { describe, expect, it } from 'vitest';
import { planFit, type PlanInput } from '../src/fit/index.ts';
import {
  bodyTableChart,
  DEFAULT_CHOICES,
  US_MISSES,
  type Body,
  type Plan,
  type PlanChoices,
  type SizeChart,
  renderPhrase,
  TELL_IN,
} from '../src/garment/index.ts';

/**
 * Size choice against published worked cases. Chart: US misses' standard body measurements, 1967 and after (seen in a transcription;
 * size 22 from memory). Rules: Texas AgriLife E-372 (2 in rule, seen), Washington Bulletin 78 of 1922 (between sizes, seen),
 * US Army TM 10-227 (trousers by the seat, seen), ASTM D5585-11e1 (upper chest rows, seen; copyrighted, test data only).
 */
const IN = 25.4;

type Girths = { bust?: number; upper?: number; waist?: number; hip?: number };

function body({ bust, upper, waist, hip }: Girths): Body {
  const given = { 'bust-girth': bust, 'upper-bust-girth': upper, 'waist-girth': waist, 'hip-girth': hip };
  const readings = Object.fromEntries(
    Object.entries(given).flatMap(([id, v]) => (v === undefined ? [] : [[id, [{ value: v * IN }]]])),
  );
  return { id: 'case', name: 'Case', wearer: 'woman', show: 'in', waist: 'natural', readings };
}

/** A chart whose garment is the body plus a flat ease at every level (in): the rules then act on the chart's own body steps. */
function withEase(chart: SizeChart, ease: { bust: number; waist: number; hip: number }): SizeChart {
  const row = (id: 'bust-girth' | 'waist-girth' | 'hip-girth', e: number): (number | null)[] =>
    (chart.body[id] ?? []).map((b) => (b === null ? null : b + e * IN));
  return {
    ...chart,
    finished: {
      bust: row('bust-girth', ease.bust),
      waist: row('waist-girth', ease.waist),
      hip: row('hip-girth', ease.hip),
    },
  };
}

const misses = withEase(bodyTableChart(US_MISSES), { bust: 3, waist: 1, hip: 2.5 });

function plan(girths: Girths, choices: Partial<PlanChoices> = {}, more: Partial<PlanInput> = {}): Plan {
  return planFit({
    body: body(girths),
    chart: misses,
    fabric: { name: 'calico', kind: 'woven' },
    choices: { ...DEFAULT_CHOICES, ...choices },
    cloth: { kind: 'woven' },
    garment: 'dress',
    ...more,
  });
}
const sizes = (p: Plan): Record<string, string> => Object.fromEntries(p.levels.map((l) => [l.level, l.size]));
const at = (p: Plan, level: string) => p.levels.find((l) => l.level === level)!;
const codes = (p: Plan): string[] => p.findings.map((f) => f.code);

describe('worked size choices (trade notes 4.1, misses chart)', () => {
  it('A: an exact row takes its own size everywhere, nothing left over', () => {
    const p = plan({ bust: 36, upper: 35, waist: 28, hip: 38 });
    expect(p.base.size).toBe('14');
    expect(sizes(p)).toEqual({ bust: '14', waist: '14', hip: '14' });
    for (const l of p.levels) expect(l.residual).toBeWithinMm(0, 1e-9);
  });

  it('B and T8: full bust 3 in over the upper bust takes the smaller size and a bust alteration of 2 in (E-372)', () => {
    const p = plan({ bust: 38, upper: 35, waist: 28, hip: 38 });
    expect(p.base.size).toBe('14');
    expect(sizes(p)).toEqual({ bust: '14', waist: '14', hip: '14' });
    expect(at(p, 'bust').residual).toBeWithinMm(2 * IN, 1e-9);
    expect(codes(p)).toContain('bust-fuller');
    // Without the rule the full bust would have chosen 16.
    expect(plan({ bust: 38, upper: 35, waist: 28, hip: 38 }, { upperBust: 'off' }).base.size).toBe('16');
  });

  it('C: bust 14, waist and hip 16', () => {
    const p = plan({ bust: 36, upper: 35.5, waist: 30, hip: 40 });
    expect(sizes(p)).toEqual({ bust: '14', waist: '16', hip: '16' });
    expect(codes(p)).not.toContain('sizes-far-apart');
  });

  it('D: in fractions, bust 12, waist half way from 12 to 14, hip half way from 14 to 16', () => {
    const p = plan({ bust: 34, upper: 33, waist: 27.25, hip: 39 }, { method: 'part' });
    expect(at(p, 'bust').sizeIndex).toBeCloseTo(3, 9);
    expect(at(p, 'waist').sizeIndex).toBeCloseTo(3.5, 9);
    expect(at(p, 'hip').sizeIndex).toBeCloseTo(4.5, 9);
    for (const l of p.levels) expect(l.residual).toBeWithinMm(0, 1e-9);
  });

  it('D: in whole sizes, 12 at the bust, and half way the smaller: 12 at the waist, 14 at the hip, the rest at the seams', () => {
    const p = plan({ bust: 34, upper: 33, waist: 27.25, hip: 39 });
    expect(sizes(p)).toEqual({ bust: '12', waist: '12', hip: '14' });
    expect(at(p, 'waist').residual).toBeWithinMm(0.75 * IN, 1e-9);
    expect(at(p, 'hip').residual).toBeWithinMm(1 * IN, 1e-9);
  });

  it('E and T9: a 35 in bust on an even chart. Bulletin 78 takes the larger, 14; our default is the smaller, 12', () => {
    const girths = { bust: 35, upper: 34, waist: 28, hip: 37 };
    // Followed by default: between sizes the smaller, added to at the seams (common practice, and what the job asks for).
    expect(plan(girths).base.size).toBe('12');
    expect(at(plan(girths), 'bust').residual).toBeWithinMm(1 * IN, 1e-9);
    // The 1922 bulletin's habit stands as a setting.
    expect(plan(girths, { between: 'larger' }).base.size).toBe('14');
    expect(at(plan(girths, { between: 'larger' }), 'bust').residual).toBeWithinMm(-1 * IN, 1e-9);
  });

  it('F: in fractions, bust 15, waist 20, hip 16: over two sizes from bust to waist, so alter rather than blend', () => {
    const p = plan({ bust: 37, upper: 36, waist: 34, hip: 40 }, { method: 'part' });
    expect(at(p, 'bust').sizeIndex).toBeCloseTo(4.5, 9);
    expect(at(p, 'waist').sizeIndex).toBeCloseTo(7, 9);
    expect(at(p, 'hip').sizeIndex).toBeCloseTo(5, 9);
    expect(p.findings.filter((f) => f.code === 'sizes-far-apart').map((f) => f.where.level)).toEqual([
      'waist',
    ]);
    expect(p.findings.find((f) => f.code === 'sizes-far-apart')?.values).toMatchObject({ apart: 2.5 });
  });

  it('F: in whole sizes, bust 14 (half way, the smaller), waist 20, hip 16: three sizes apart', () => {
    const p = plan({ bust: 37, upper: 36, waist: 34, hip: 40 });
    expect(sizes(p)).toEqual({ bust: '14', waist: '20', hip: '16' });
    expect(p.findings.find((f) => f.code === 'sizes-far-apart')?.values).toMatchObject({ apart: 3 });
  });
});

/** Our own rule (docs/decisions/size-choice.md): within a quarter of the step, at most 12 mm, a measure is that size. */
describe('a measure near to a size', () => {
  const bust = (inches: number): Plan => plan({ bust: inches });

  it('is that size: 37 3/4 in of bust are 38, not 1 3/4 in added to 36 (and 37.88 and 37.90 are the same)', () => {
    for (const inches of [37.75, 37.88, 37.9, 38]) {
      const p = bust(inches);
      expect([p.base.size, at(p, 'bust').size]).toEqual(['16', '16']);
      expect(Math.abs(at(p, 'bust').residual)).toBeLessThanOrEqual(0.25 * IN + 1e-9);
      expect(codes(p)).not.toContain('edge-change-large');
    }
  });

  it('as well when a little over it; beyond, the smaller', () => {
    expect(bust(36.25).base.size).toBe('14');
    expect(bust(36.75).base.size).toBe('14');
    // 1/2 in under 38 is 12.7 mm.
    expect(bust(37.5).base.size).toBe('14');
    expect(bust(37.55).base.size).toBe('16');
  });

  it('with smaller steps is nearer: 1/4 in where sizes are 1 in apart', () => {
    expect(bust(32.25).base.size).toBe('10');
    expect(bust(32.2).base.size).toBe('8');
  });
});

/** The two taught ways to read the upper-bust rule. Figures: ASTM D5585-11e1 Table 1, rows bust and upper chest (seen). */
describe('the upper-bust rule uses the chart’s own difference', () => {
  const bust = [31.125, 31.75, 33, 34.125, 35.25, 36.25, 37.25, 38.75, 40.375, 42.125, 44, 46].map(
    (v) => v * IN,
  );
  const upper = [31.75, 32.25, 33.25, 34.125, 35, 35.875, 36.75, 38, 39.25, 40.625, 42.25, 43.875].map(
    (v) => v * IN,
  );
  const labels = ['00', '0', '2', '4', '6', '8', '10', '12', '14', '16', '18', '20'];
  const chart: SizeChart = {
    sizes: labels.map((id) => ({ id, label: id })),
    waist: 'natural',
    body: { 'bust-girth': bust, 'upper-bust-girth': upper },
    finished: { bust: bust.map((b) => b + 3 * IN) },
    finishedLengths: {},
  };
  const base = (b: number, u: number, upperBust: PlanChoices['upperBust']): string =>
    plan({ bust: b, upper: u }, { upperBust }, { chart }).base.size;

  it('which runs from -5/8 in at size 00 over 0 at size 4 to +2 1/8 in at size 20', () => {
    expect((bust[0]! - upper[0]!) / IN).toBeCloseTo(-5 / 8, 9);
    expect((bust[3]! - upper[3]!) / IN).toBeCloseTo(0, 9);
    expect((bust[5]! - upper[5]!) / IN).toBeCloseTo(3 / 8, 9);
    expect((bust[7]! - upper[7]!) / IN).toBeCloseTo(3 / 4, 9);
    expect((bust[11]! - upper[11]!) / IN).toBeCloseTo(2 + 1 / 8, 9);
  });

  it('so that every standard body takes its own size', () => {
    for (const [i, label] of labels.entries())
      expect(base(bust[i]! / IN, upper[i]! / IN, 'chart-difference')).toBe(label);
  });

  it('where the constant of 2 in says nothing of a bust 1 1/4 in fuller than the small size its shoulders have', () => {
    // Upper chest 32 1/4 is size 0, made for a bust of 31 3/4; 33 is 1 1/4 in more, and 3/4 in more than the upper chest.
    expect(base(33, 32.25, 'chart-difference')).toBe('0');
    expect(base(33, 32.25, 'two-inches')).toBe('2');
  });

  it('and would miss a body 1 1/2 in fuller than the standard size 8', () => {
    // Upper chest 35 7/8 is size 8; the bust 37 3/4 is 1 7/8 in more, where the chart allows 3/8 to 3/4.
    expect(base(37.75, 35.875, 'chart-difference')).toBe('8');
    expect(base(37.75, 35.875, 'two-inches')).toBe('10');
  });

  it('speaks only beyond what a tape repeats to, 1 cm', () => {
    // Bust 37 1/4 is size 10, upper chest 36 3/4; 1/8 in less says nothing, 1/2 in less (12.7 mm) does.
    expect(base(37.25, 36.625, 'chart-difference')).toBe('10');
    expect(base(37.25, 36.375, 'chart-difference')).toBe('10');
    expect(base(37.25, 36.25, 'chart-difference')).toBe('8');
    expect(codes(plan({ bust: 37.25, upper: 36.625 }, {}, { chart }))).not.toContain('bust-fuller');
  });
});

describe('the upper bust read straight as the chart’s bust (taught as well; E-372 says from 2 in on, not which way)', () => {
  it('B by it: an upper bust of 35 in lies between 12 and 14: the smaller, and 4 in of bust to alter', () => {
    const p = plan({ bust: 38, upper: 35, waist: 28, hip: 38 }, { upperBust: 'straight' });
    expect(p.base.size).toBe('12');
    expect(at(p, 'bust').residual).toBeWithinMm(4 * IN, 1e-9);
    expect(codes(p)).toContain('bust-fuller');
    expect(renderPhrase(p.base.why.sentence, TELL_IN)).toContain(
      "the upper bust is read as the chart's bust, and 35 in is between sizes 12 (34 in) and 14 (36 in)",
    );
  });

  it('is silent below 2 in of difference: the full bust chooses', () => {
    const p = plan({ bust: 38, upper: 36.25 }, { upperBust: 'straight' });
    expect(p.base.size).toBe('16');
    expect(codes(p)).not.toContain('bust-fuller');
  });
});

describe('trousers between two sizes (T12, TM 10-227)', () => {
  const trousers = (hip: number, ease: number): Plan =>
    plan(
      { waist: 28, hip },
      {},
      { garment: 'trousers', chart: withEase(bodyTableChart(US_MISSES), { bust: 3, waist: 1, hip: ease }) },
    );

  it('take the size that fits the seat, though the waist is then altered', () => {
    // 39 in hip between 14 (38) and 16 (40). With 2 in of ease the 14 leaves 1 in, less than the 1 1/2 in a seat needs: 16.
    const p = trousers(39, 2);
    expect(p.base.size).toBe('16');
    expect(at(p, 'hip').size).toBe('16');
    expect(at(p, 'waist').size).toBe('14');
    expect(renderPhrase(p.base.why.sentence, TELL_IN)).toContain('fits the seat');
  });

  it('the smaller fits the seat when it leaves the wearing ease', () => {
    expect(trousers(39, 3).base.size).toBe('14');
  });
});
