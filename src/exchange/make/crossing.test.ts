import { describe, expect, it } from 'vitest';
import { linePath, pathJoin, throughPoints } from '../../geometry/index.ts';
import { crossingShare } from './crossing.ts';

const at = (x: number, y: number) => ({ x, y });
/** A level line across the lower third of an edge 90 mm high, drawn short of it. */
const level = linePath(at(-60, 30), at(-20, 30));

describe('where an edge crosses a level line', () => {
  it('is told as a share of the edge, the line prolonged to it', () =>
    expect(crossingShare(linePath(at(0, 0), at(0, 90)), level)).toBeCloseTo(1 / 3, 9));

  it('is told once where two curves of the edge join right there', () => {
    const joined = pathJoin([linePath(at(0, 0), at(0, 30)), linePath(at(0, 30), at(0, 90))]);
    expect(crossingShare(joined, level)).toBeCloseTo(1 / 3, 9);
  });

  it('is not told where the edge ends before the line', () =>
    expect(crossingShare(linePath(at(0, 40), at(0, 90)), level)).toBeNull());

  it('is not told of an edge that comes back over the line', () =>
    expect(crossingShare(throughPoints([at(0, 0), at(20, 60), at(40, 0)]), level)).toBeNull());
});
