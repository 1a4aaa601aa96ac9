import { describe, expect, it } from 'vitest';
import { linePath } from '../../geometry/index.ts';
import { chainPaths } from './chain.ts';

/** So many lines of 100 mm from one point, all in different directions. */
const star = (rays: number) =>
  Array.from({ length: rays }, (_, i) => {
    const angle = (2 * Math.PI * i) / rays;
    return {
      path: linePath({ x: 0, y: 0 }, { x: 100 * Math.cos(angle), y: 100 * Math.sin(angle) }),
      closed: false,
    };
  });

describe('lines that meet at one point', () => {
  it('go on into one another where a nest of sizes may have its corner', () => {
    expect(chainPaths(star(2))).toHaveLength(1);
    expect(chainPaths(star(40)).length).toBeLessThan(40);
  });

  it('are left as they are where so many ends are no corner', () => {
    expect(chainPaths(star(101))).toHaveLength(101);
  });
});
