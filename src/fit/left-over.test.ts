import { describe, expect, it } from 'vitest';
import {
  bodyTableChart,
  DEFAULT_CHOICES,
  renderPhrase,
  TELL_IN,
  US_MISSES,
  type LevelPlan,
  type MeasureId,
  type MovableEdge,
  type SizeChart,
} from '../garment/index.ts';
import { PLAIN_DRESS } from './plain-input.test-case.ts';
import { markingWords, planFit, type PlanInput } from './index.ts';

/** Misses' sizes as published (US commercial standard table, trade notes 2.1), garments 3 in larger all over (our own figure). */
const IN = 25.4;
const misses = bodyTableChart(US_MISSES);
const chart: SizeChart = {
  ...misses,
  finished: Object.fromEntries(
    ['bust', 'waist', 'hip'].map((level) => [
      level,
      misses.body[`${level}-girth` as MeasureId]!.map((v) => v! + 3 * IN),
    ]),
  ),
};
const edge = (piece: string, seam: string, side: MovableEdge['side']): MovableEdge => ({
  piece,
  edge: seam,
  seam,
  times: 2,
  side,
});
function at(level: string, girths: Partial<Record<MeasureId, number>>, more: Partial<PlanInput> = {}) {
  const plan = planFit({
    body: {
      id: 'b',
      name: 'Bo',
      wearer: 'woman',
      show: 'in',
      waist: 'natural',
      readings: Object.fromEntries(Object.entries(girths).map(([id, v]) => [id, [{ value: v! * IN }]])),
    },
    chart,
    ...PLAIN_DRESS,
    ...more,
  });
  return { plan, level: plan.levels.find((l) => l.level === level)! };
}
const why = (level: LevelPlan): string => renderPhrase(level.why.residual.sentence, TELL_IN);

describe('what a size leaves over', () => {
  it('is what the alterations give and what the seams take', () => {
    // Upper bust 34 1/2 in is a bust of 36 (size 14) by 2 in less; the bust of 38 7/8 lacks 2 7/8 in, of which an alteration gives 2.
    const { level } = at(
      'bust',
      { 'bust-girth': 38.875, 'upper-bust-girth': 34 },
      { bustAltered: 2 * IN, seams: 6 },
    );
    expect(level.size).toBe('14');
    expect(level.residual).toBeWithinMm(2.875 * IN, 1e-9);
    expect(level.leftOver.altered).toBeWithinMm(2 * IN, 1e-9);
    expect(level.leftOver.seams).toBeWithinMm(0.875 * IN, 1e-9);
    expect(level.perSeam * level.seams).toBeWithinMm(level.leftOver.seams, 1e-9);
    // 7/8 in over six seams is 7/48: never said to be 1/8 exactly.
    expect(why(level)).toContain(
      'of which the bust alteration gives 2 in; the rest, 7/8 in, = about 1/8 in at each of 6 seams = about 1/16 in on each of 12 cut edges.',
    );
  });

  it('names front and back where their edges do not take the same', () => {
    const movable = { waist: [edge('front', 'side', 'front'), edge('back', 'side', 'back')] };
    const measured = { waist: chart.finished['waist'] as number[] };
    const { level } = at(
      'waist',
      { 'bust-girth': 36, 'waist-girth': 29 },
      { movable, measured, choices: { ...DEFAULT_CHOICES, front: { waist: 0.75 } } },
    );
    expect(level.leftOver.seams).toBeWithinMm(IN, 1e-9);
    expect(level.groups).toEqual([
      { side: 'front', edges: 2, each: expect.closeTo(0.375 * IN, 6) as number },
      { side: 'back', edges: 2, each: expect.closeTo(0.125 * IN, 6) as number },
    ]);
    expect(why(level)).toContain(
      '1 in all round = in front 3/8 in on each of 2 cut edges and behind 1/8 in on each of 2 cut edges.',
    );
  });

  it('of a chart alone divides as well, on half of the edges each, and is marked so', () => {
    const { plan, level } = at(
      'waist',
      { 'bust-girth': 36, 'waist-girth': 29 },
      { choices: { ...DEFAULT_CHOICES, front: { waist: 0.75 } } },
    );
    expect(level.groups.map((g) => [g.side, g.edges])).toEqual([
      ['front', 2],
      ['back', 2],
    ]);
    const marks = markingWords(
      plan,
      chart.sizes.map((s) => s.id),
    ).map((line) => renderPhrase(line, TELL_IN));
    expect(marks).toContain(
      'Waist: each cut edge in front that shares the change: 3/8 in outside the line of size 14; each cut edge behind that shares the change: 1/8 in outside the line of size 14.',
    );
  });

  it('stays open where no seam may move', () => {
    const { level } = at(
      'waist',
      { 'bust-girth': 36, 'waist-girth': 29 },
      { movable: {}, measured: { waist: chart.finished['waist'] as number[] } },
    );
    expect(level).toMatchObject({ perSeam: 0, perEdge: 0, groups: [], shares: [] });
    expect(level.leftOver).toEqual({ altered: 0, seams: 0, open: level.residual });
  });

  it('shared by many seams says that it is arithmetic, by two side seams does not', () => {
    const six = at('bust', { 'bust-girth': 37.5 }, { seams: 6 }).level;
    expect(why(six)).toContain('Equal shares are arithmetic, not shaping');
    expect(why(at('bust', { 'bust-girth': 37.5 }).level)).not.toContain('arithmetic');
  });
});
