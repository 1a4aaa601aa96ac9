import { describe, expect, it } from 'vitest';
import {
  bodyTableChart,
  EN_CHILDREN,
  US_MEN,
  type Body,
  type Finding,
  type MeasureId,
  type Plan,
  type SizeChart,
} from '../garment/index.ts';
import { PLAIN_DRESS } from './plain-input.test-case.ts';
import { planFit } from './index.ts';

/** The plan of a garment in these sizes for somebody of whom this is known, mm. */
function planOf(
  chart: SizeChart,
  wearer: Body['wearer'],
  known: Partial<Record<MeasureId, number>>,
  garment: 'smock' | 'top' = 'top',
): Plan {
  const readings = Object.fromEntries(Object.entries(known).map(([id, value]) => [id, [{ value }]]));
  const body: Body = { id: 'b', name: 'Bo', wearer, show: 'cm', waist: 'natural', readings };
  return planFit({ ...PLAIN_DRESS, chart, body, garment });
}

describe('sizes by who wears it', () => {
  // US men's sizes by neckband (from memory): 15 1/2 in is size 40. A collar is made half an inch larger than the neck (common practice).
  it('compares a collar with the neck, not with its base, where the table gives the neck', () => {
    const men = bodyTableChart(US_MEN);
    const finished = { neck: men.body['neck-girth']!.map((neck) => neck! + 12.7) };
    const neckOf = (known: Partial<Record<MeasureId, number>>) =>
      planOf({ ...men, finished }, 'man', {
        'bust-girth': 1016,
        'neck-base-girth': 415,
        ...known,
      }).levels.find((l) => l.level === 'neck');
    const { body, wantedEase, target, size } = neckOf({ 'neck-girth': 393.7 })!;
    expect(body).toBe(393.7);
    expect(wantedEase).toBeCloseTo(12.7, 6);
    expect(target).toBeCloseTo(406.4, 6);
    expect(size).toBe('40');
    expect(neckOf({})).toBeUndefined();
  });

  // EN 13402: children by height.
  it('asks a child for its height where the sizes go by it, and says what stands in', () => {
    const children = bodyTableChart(EN_CHILDREN);
    const wanted = (wearer: Body['wearer'], known: Partial<Record<MeasureId, number>>): Finding | undefined =>
      planOf(children, wearer, known, 'smock').findings.find((f) => f.code === 'height-wanted');
    expect(wanted('child', { 'bust-girth': 640 })).toMatchObject({
      severity: 'warning',
      where: { measure: 'stature' },
    });
    expect(wanted('child', { 'bust-girth': 640, stature: 1160 })).toBeUndefined();
    // A grown-up in a child's sizes is chosen for by girth.
    expect(wanted('woman', { 'bust-girth': 640 })).toBeUndefined();
  });

  it('chooses a man’s and a child’s size by the chest, whatever the upper chest is', () => {
    const men = bodyTableChart(US_MEN);
    const known = { 'bust-girth': 1016, 'upper-bust-girth': 930 };
    const { base, findings } = planOf(men, 'man', known);
    expect(base.size).toBe('40');
    expect(findings.map((f) => f.code)).not.toContain('bust-fuller');
    expect(planOf(men, 'woman', known).findings.map((f) => f.code)).toContain('bust-fuller');
  });
});
