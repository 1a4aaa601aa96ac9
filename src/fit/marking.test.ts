import { describe, expect, it } from 'vitest';
import {
  bodyTableChart,
  DEFAULT_CHOICES,
  US_MISSES,
  type SizeChart,
  renderPhrase,
  TELL_IN,
} from '../garment/index.ts';
import { markingWords, planFit } from './index.ts';

const misses = bodyTableChart(US_MISSES);
const ids = misses.sizes.map((s) => s.id);
const row = (id: 'bust-girth' | 'waist-girth', ease: number) => misses.body[id]!.map((v) => v! + ease * 25.4);
const chart: SizeChart = {
  ...misses,
  finished: { bust: row('bust-girth', 3), waist: row('waist-girth', 1) },
};

function words(girths: Record<string, number>, method: 'whole' | 'part' = 'whole'): readonly string[] {
  const readings = Object.fromEntries(Object.entries(girths).map(([id, v]) => [id, [{ value: v * 25.4 }]]));
  const body = {
    id: 'x',
    name: 'x',
    wearer: 'woman' as const,
    show: 'in' as const,
    waist: 'natural' as const,
    readings,
  };
  const plan = planFit({
    body,
    chart,
    fabric: { name: 'calico', kind: 'woven' },
    choices: { ...DEFAULT_CHOICES, method },
    cloth: { kind: 'woven' },
    garment: 'bodice',
    seams: 6,
  });
  return markingWords(plan, ids).map((line) => renderPhrase(line, TELL_IN));
}

describe('marking a plan on tissue', () => {
  it('says length first, then which line at which level, how far beside it, and where to run from size to size', () => {
    expect(words({ 'bust-girth': 37.5, 'waist-girth': 30, 'back-waist-length': 15.75 })).toEqual([
      'Shorten by 3/4 in on the back, at its lengthen or shorten line above the waist (about 2 in above it where none is printed): fold out 3/8 in deep, then true the sides.',
      'Neck, shoulder and armhole: the lines of size 14.',
      'Bust: mark 1/8 in outside the line of size 14 at both edges of each of the 6 seams that share the change. Leave folds, centre lines and zip seams on the line of size 14.',
      'Waist: mark on the line of size 16 at every edge.',
      'Between bust (14) and waist (16): join the marks with a long smooth curve that leaves each line in its own direction; do the same on front and back, and walk the seam.',
      'Carry every change to facing, lining and waistband, walk the seams, and make a test garment of anything close.',
    ]);
  });

  it('leaves out what is less than a pencil line', () => {
    // Size 14 is made for 36 in: 9/32 in over 12 cut edges is 0.6 mm at each, less than 1/32 in.
    expect(words({ 'bust-girth': 36 + 9 / 32, 'waist-girth': 28 })).toContain(
      'Bust: mark on the line of size 14 at every edge.',
    );
  });

  it('says how far on the way between two sizes a fraction lies', () => {
    expect(words({ 'bust-girth': 37, 'waist-girth': 28 }, 'part')).toContain(
      'Bust: mark on the line of size 14, 50 % of the way to 16, at every edge.',
    );
  });
});
