import { describe, expect, it } from 'vitest';
import { firstMeasures, measureName, type SizeChart } from './index.ts';

describe('what is measured first', () => {
  const chart = (body: SizeChart['body']): SizeChart => ({
    sizes: [],
    waist: 'unsaid',
    body,
    finished: {},
    finishedLengths: {},
  });

  // EN 13402: a child's size is its height.
  it('is a child’s height, and a bust of nobody but a woman', () => {
    expect(firstMeasures('child')[0]).toBe('stature');
    expect(firstMeasures('woman')).toContain('upper-bust-girth');
    for (const wearer of ['man', 'child'] as const)
      for (const id of firstMeasures(wearer)) expect(measureName(id, wearer)).not.toContain('bust');
  });

  it('is for a pattern what chooses its size and where it hangs, the height where its sizes go by it', () => {
    const smock = { garment: 'smock', chart: chart({ stature: [1160], 'bust-girth': [600] }) } as const;
    expect(firstMeasures('child', smock).slice(0, 2)).toEqual(['stature', 'bust-girth']);
    expect(firstMeasures('woman', smock)).not.toContain('stature');
    const skirt = { garment: 'skirt', chart: chart({}) } as const;
    expect(firstMeasures('woman', skirt)).toEqual(['hip-girth', 'waist-girth', 'hip-depth']);
    expect(firstMeasures('man', { ...skirt, garment: 'trousers' })).toContain('crotch-depth');
    expect(firstMeasures('child', { ...skirt, garment: 'top' })).not.toContain('front-waist-length');
  });
});
