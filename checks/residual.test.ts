import { describe, expect, it } from 'vitest';
import { planFit, type PlanInput } from '../src/fit/index.ts';
import {
  bodyTableChart,
  DEFAULT_CHOICES,
  US_MISSES,
  type Body,
  type MovableEdge,
  type SizeChart,
  renderPhrase,
  TELL_IN,
} from '../src/garment/index.ts';

/**
 * Spreading a residual, against common practice and Central Washington University, Costume Text ch. 17 (seen): a small girth change is
 * divided by the number of seam edges available.
 */
const IN = 25.4;
const misses = bodyTableChart(US_MISSES);

function body(girths: Record<string, number>): Body {
  return {
    id: 'case',
    name: 'Case',
    wearer: 'woman',
    show: 'in',
    waist: 'natural',
    readings: Object.fromEntries(Object.entries(girths).map(([id, v]) => [id, [{ value: v * IN }]])),
  };
}
function chart(ease: number): SizeChart {
  const rows = Object.entries(misses.body).map(([id, row]) => [
    id.replace('-girth', ''),
    row!.map((v) => (v === null ? null : v + ease * IN)),
  ]);
  return {
    ...misses,
    finished: Object.fromEntries(rows.filter(([id]) => id !== 'back-waist-length')) as SizeChart['finished'],
  };
}
const input = (girths: Record<string, number>, more: Partial<PlanInput> = {}): PlanInput => ({
  body: body(girths),
  chart: chart(3),
  fabric: { name: 'calico', kind: 'woven' },
  choices: DEFAULT_CHOICES,
  cloth: { kind: 'woven' },
  garment: 'dress',
  ...more,
});

describe('six seams and a residual of 1 1/2 in (common practice)', () => {
  // A 37 1/2 in bust lies between 14 (36) and 16 (38): the smaller, and 1 1/2 in is missing.
  const girths = { 'bust-girth': 37.5, 'waist-girth': 28, 'hip-girth': 38 };

  it('is 1 1/2 in all round, 1/4 in per seam, 1/8 in per cut edge from the chart alone', () => {
    const bust = planFit(input(girths, { seams: 6 })).levels.find((l) => l.level === 'bust')!;
    expect(bust.size).toBe('14');
    expect(bust.residual).toBeWithinMm(1.5 * IN, 1e-9);
    expect(bust).toMatchObject({ seams: 6, edges: 12 });
    expect(bust.perSeam).toBeWithinMm(IN / 4, 1e-9);
    expect(bust.perEdge).toBeWithinMm(IN / 8, 1e-9);
    expect(renderPhrase(bust.why.residual.sentence, TELL_IN)).toContain(
      '1 1/2 in all round = 1/4 in at each of 6 seams = 1/8 in on each of 12 cut edges',
    );
  });

  it('and from pieces: a panelled bodice has six seams, each drawn edge standing for two cut edges', () => {
    const pair = (piece: string, edge: string, seam: string, side: MovableEdge['side']): MovableEdge => ({
      piece,
      edge,
      seam,
      times: 2,
      side,
    });
    const movable = {
      bust: [
        pair('front', 'panel', 'front-panel', 'front'),
        pair('side-front', 'panel', 'front-panel', 'front'),
        pair('side-front', 'side', 'side', 'front'),
        pair('side-back', 'side', 'side', 'back'),
        pair('side-back', 'panel', 'back-panel', 'back'),
        pair('back', 'panel', 'back-panel', 'back'),
      ],
    };
    const p = planFit(input(girths, { movable, measured: { bust: chart(3).finished['bust'] as number[] } }));
    const bust = p.levels.find((l) => l.level === 'bust')!;
    expect(bust).toMatchObject({ seams: 6, edges: 12 });
    expect(bust.shares).toHaveLength(6);
    for (const s of bust.shares) expect(s.change).toBeWithinMm(IN / 8, 1e-9);
    expect(p.levels.map((l) => l.level)).toEqual(['bust']);
  });

  it('two side seams when nobody says', () => {
    const bust = planFit(input(girths)).levels.find((l) => l.level === 'bust')!;
    expect(bust).toMatchObject({ seams: 2, edges: 4 });
    expect(bust.perEdge).toBeWithinMm((1.5 * IN) / 4, 1e-9);
  });
});

describe('the quarter rule and T2: +2 in at the hip on two side seams is 1/2 in on each of four edges', () => {
  it('from the largest size on, where nothing larger is left to cut', () => {
    const hip = planFit(input({ 'bust-girth': 44, 'waist-girth': 37, 'hip-girth': 48 })).levels.find(
      (l) => l.level === 'hip',
    )!;
    expect(hip.size).toBe('22');
    expect(hip.residual).toBeWithinMm(2 * IN, 1e-9);
    expect(hip.perEdge).toBeWithinMm(IN / 2, 1e-9);
  });
});

describe('lengths (trade notes 5.2, derived; T1 and fold depth, Costume Text ch. 17, seen)', () => {
  it('back waist 15 1/2 in on a size 12 of 16 1/2 in finished needs 15 3/4: shorten 3/4, a fold 3/8 deep', () => {
    const finishedLengths = {
      'back-waist-length': misses.body['back-waist-length']!.map((v) => v! + 0.25 * IN),
    };
    const p = planFit(
      input(
        { 'bust-girth': 34, 'waist-girth': 26.5, 'hip-girth': 36, 'back-waist-length': 15.5 },
        { chart: { ...chart(3), finishedLengths } },
      ),
    );
    expect(p.base.size).toBe('12');
    const back = p.lengths.find((l) => l.measure === 'back-waist-length')!;
    expect(back.pattern).toBeWithinMm(16.5 * IN, 1e-9);
    expect(back.body + back.ease).toBeWithinMm(15.75 * IN, 1e-9);
    expect(back.residual).toBeWithinMm(-0.75 * IN, 1e-9);
    // Shortening is folded out: the fold is half as deep as what it takes away.
    expect(-back.residual / 2).toBeWithinMm(0.375 * IN, 1e-9);
    expect(renderPhrase(back.why.sentence, TELL_IN)).toContain('shorten by 3/4 in');
  });

  it('T1: a bodice 1 in too long is shortened by 1 in, a fold 1/2 in deep', () => {
    const p = planFit(
      input({ 'bust-girth': 36, 'waist-girth': 28, 'hip-girth': 38, 'back-waist-length': 15.5 }),
    );
    expect(p.lengths.find((l) => l.measure === 'back-waist-length')!.residual).toBeWithinMm(-1 * IN, 1e-9);
  });
});

describe('waist to hip (common practice)', () => {
  it('is 9 in when nothing is known, and said so', () => {
    const p = planFit(input({ 'bust-girth': 36, 'waist-girth': 28, 'hip-girth': 38 }));
    const note = p.findings.find((f) => f.code === 'hip-depth-assumed')!;
    expect(note.amount).toBeWithinMm(9 * IN, 1e-9);
    expect(note.severity).toBe('note');
    const measured = planFit(input({ 'bust-girth': 36, 'waist-girth': 28, 'hip-girth': 38, 'hip-depth': 8 }));
    expect(measured.findings.some((f) => f.code === 'hip-depth-assumed')).toBe(false);
  });
});
