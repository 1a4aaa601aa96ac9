import { describe, expect, it } from 'vitest';
import { linePath, pathLength, pathStart } from '../geometry/index.ts';
import { dartedWaist } from './darts.ts';

describe('dartedWaist', () => {
  const open = linePath({ x: 240, y: 0 }, { x: 0, y: 0 });
  const made = (wanted: number) =>
    dartedWaist(open, wanted, [{ id: 'dart', name: 'dart', at: 0.5, intake: 1, length: 100 }], {
      serves: 'hip',
      foldToward: 'second',
      allowance: 15,
    });

  it('sews to the wanted length', () => {
    for (const wanted of [200, 215, 225]) {
      const sewn = made(wanted)
        .edges.filter((e) => e.kind === 'seam')
        .reduce((sum, e) => sum + pathLength(e.path), 0);
      expect(sewn).toBeCloseTo(wanted, 3);
    }
  });

  it('opens a dart by what the waist has to lose, near enough, with equal legs', () => {
    const [, first, second] = made(215).edges;
    const [a, b] = [pathStart(first!.path), second!.path.at(-1)!];
    // worked: 240 − 215 = 25, less the little that the raised runs are longer than the straight line
    expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(25, -1);
    expect(pathLength(first!.path)).toBeCloseTo(pathLength(second!.path), 6);
  });
});
