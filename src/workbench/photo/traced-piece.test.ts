import { describe, expect, it } from 'vitest';
import { drawingSvg, readFile, type Proposal } from '../../exchange/index.ts';
import { linePath, pathJoin, type Point } from '../../geometry/index.ts';
import { tracedDrawing, type TracedSize } from './traced-piece.ts';

/** An outline of straight runs between corners, as traced. */
const outline = (corners: readonly Point[]): TracedSize => ({
  clicks: corners.map((at) => ({ at, straight: true })),
  runs: corners.map((at, i) => ({ path: linePath(at, corners[(i + 1) % corners.length]!), contrast: 0.5 })),
  closed: true,
});
const read = (...sizes: readonly TracedSize[]): Promise<Proposal> =>
  readFile(
    new TextEncoder().encode(
      drawingSvg(
        tracedDrawing(
          'x',
          [{ name: 'Yoke', count: 2, fold: null, sizes }],
          sizes.map((_, k) => String(k)),
        ),
      ),
    ),
    'x.svg',
  );
const long = ({ pieces }: Proposal): number[][] =>
  pieces[0]!.edges.map((edge) => edge.lengths.map((mm) => Math.round(mm)));

describe('a traced piece read as a pattern', () => {
  const small = [
    { x: 0, y: 0 },
    { x: 200, y: 0 },
    { x: 200, y: 100 },
    // Set to lead the line on its way: no corner.
    { x: 120, y: 101 },
    // 25 degrees: a corner.
    { x: 80, y: 100 },
    { x: 0, y: 60 },
  ];
  const large = small.map(({ x, y }) => ({ x: 1.1 * x, y: 1.1 * y }));

  it('has its edges between the corners that were set, in every size', async () => {
    expect(long(await read(outline(small), outline(large)))).toEqual([
      [200, 220],
      [100, 110],
      [120, 132],
      [89, 98],
      [60, 66],
    ]);
  });

  it('has no corner where a line was traced over a fleck on its way', async () => {
    const clean = outline(small);
    const fleck = [small[0]!, { x: 98, y: 0 }, { x: 100, y: 3 }, { x: 102, y: 0 }, small[1]!];
    const [first, ...others] = clean.runs;
    const path = pathJoin(fleck.slice(1).map((p, i) => linePath(fleck[i]!, p)));
    const flecked = { ...clean, runs: [{ ...first!, path }, ...others] };
    expect(long(await read(flecked, outline(large))).map(([, mm]) => mm)).toEqual([220, 110, 132, 98, 66]);
  });

  it('has the same edges when it was clicked the other way round', async () => {
    const turned = [small, large].map((corners) => outline(corners.toReversed()));
    expect(long(await read(...turned)).map(([mm]) => mm)).toEqual([200, 100, 120, 89, 60]);
  });
});
