import { describe, expect, it } from 'vitest';
import { drawingSvg, readFile, type Proposal } from '../../exchange/index.ts';
import { linePath, pathJoin, pathLength, type Point } from '../../geometry/index.ts';
import type { InsideLine } from './inside-line.ts';
import { tracedDrawing, type TracedSize } from './traced-piece.ts';

/** An outline of straight runs between corners, as traced. */
const outline = (corners: readonly Point[]): TracedSize => ({
  clicks: corners.map((at) => ({ at, straight: true })),
  runs: corners.map((at, i) => ({ path: linePath(at, corners[(i + 1) % corners.length]!), contrast: 0.5 })),
  closed: true,
  lines: [],
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

  it('has the lines inside that were set, each what it was said to be', async () => {
    const lines = (k: number): InsideLine[] => [
      {
        means: 'high-hip',
        ends: [
          { x: 0, y: 30 * k },
          { x: 200 * k, y: 30 * k },
        ],
      },
      {
        means: 'adjust',
        ends: [
          { x: 0, y: 45 * k },
          { x: 200 * k, y: 45 * k },
        ],
      },
      {
        means: 'grain',
        ends: [
          { x: 100, y: 20 },
          { x: 130, y: 60 },
        ],
      },
      // Beside the edge, as hands click.
      {
        means: 'notch',
        ends: [
          { x: 50 * k, y: 0.9 },
          { x: 50 * k, y: 9 },
        ],
      },
    ];
    const { pieces } = await read(
      { ...outline(small), lines: lines(1) },
      { ...outline(large), lines: lines(1.1) },
    );
    const [piece] = pieces;
    expect(piece!.lines.map(({ kind, level }) => [kind, level])).toEqual([
      ['grain', undefined],
      ['level', 'high-hip'],
      ['adjust', undefined],
    ]);
    expect(piece!.lines[1]!.paths.map(pathLength)).toEqual([expect.closeTo(200, 1), expect.closeTo(220, 1)]);
    expect(piece!.grain.direction).toEqual({ x: expect.closeTo(0.6, 3), y: expect.closeTo(0.8, 3) });
    expect(piece!.edges.map((edge) => edge.notches.length)).toEqual([1, 0, 0, 0, 0]);
    expect(piece!.edges[0]!.notches[0]!.at).toEqual([expect.closeTo(0.25, 2), expect.closeTo(0.25, 2)]);
  });

  it('has its waist line in every size, where one crosses the mouth of a dart', async () => {
    const skirt = (k: number): TracedSize => {
      const corners = [
        { x: 0, y: 0 },
        { x: 200 * k, y: 0 },
        { x: 200 * k, y: 100 },
        { x: 110, y: 95 },
        { x: 100, y: 30 },
        { x: 90, y: 95 },
        { x: 0, y: 100 },
      ];
      return { ...outline(corners), lines: [{ means: 'waist', ends: [corners[6]!, corners[2]!] }] };
    };
    const { pieces } = await read(skirt(0.9), skirt(1), skirt(1.1));
    const waist = pieces[0]!.lines.find(({ level }) => level === 'waist')!;
    expect(waist.paths.map((path) => Math.round(pathLength(path)))).toEqual([180, 200, 220]);
  });

  it('has the same edges when it was clicked the other way round', async () => {
    const turned = [small, large].map((corners) => outline(corners.toReversed()));
    expect(long(await read(...turned)).map(([mm]) => mm)).toEqual([200, 100, 120, 89, 60]);
  });
});
