// The synthetic scanner of synthetic.test-case.ts: a nest of three sizes with known corners, drawn, blurred to pixels and made noisy.
import { describe, expect, it } from 'vitest';
import { distance, linePath, pathLength, pathStart, pathsArea, throughPoints } from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { patternFrom } from '../make/pattern.ts';
import type { Grey } from './image.ts';
import { scanPlane } from './plane.ts';
import { HEIGHT, photograph } from './synthetic.test-case.ts';
import { traceLine } from './trace.ts';
import { proposalFromTrace } from './trace-proposal.ts';
import { traceSizes } from './trace-sizes.ts';

const DPI = 80;
const TOP = (HEIGHT * 25.4) / DPI;
const flat = ({ x, y }: Point): Point => ({ x: (x / 25.4) * DPI - 0.5, y: ((TOP - y) / 25.4) * DPI - 0.5 });

/** A skirt panel: straight fold shared by all sizes, hem, curved side, curved waist. Grows by 9 mm at the side, 6 mm at the hem, 5 mm at the waist. */
function panel(k: number): Path[] {
  const foot = { x: 40, y: 60 - 6 * k };
  const hem = { x: 240 + 9 * k, y: 66 - 6 * k };
  const side = { x: 200 + 9 * k, y: 330 + 5 * k };
  const waist = { x: 40, y: 320 + 5 * k };
  return [
    linePath(foot, hem),
    throughPoints([hem, { x: 232 + 9 * k, y: 200 - 3 * k }, side]),
    throughPoints([side, { x: 120 + 4 * k, y: 321 + 5 * k }, waist]),
    linePath(waist, foot),
  ];
}
const sizes = [0, 1, 2].map(panel);
// The fold is one line in every size: drawn once, as long as the largest.
const page: Grey = photograph(
  flat,
  sizes.flatMap((runs, k) => (k === 2 ? runs : runs.slice(0, 3))).map((path) => ({ path, width: 0.7 })),
  3,
);
const plane = scanPlane(page, DPI);
const clicks = (runs: readonly Path[]) => [
  ...runs.map((run, i) => ({ at: near(pathStart(run), i), straight: i === 1 || i === 0 })),
  { at: near(pathStart(runs[0]!), 0), straight: true },
];
/** A hand misses by half a millimetre. */
const near = ({ x, y }: Point, i: number): Point => ({
  x: x + (i % 2 ? 0.4 : -0.3),
  y: y + (i > 1 ? 0.3 : -0.4),
});
const traced = traceLine(plane, clicks(sizes[0]!)).map((run) => run.path);
const guide = traced.map((run, i): Path => [
  ...run.slice(0, -1),
  pathStart(traced[(i + 1) % traced.length]!),
]);

describe('further sizes with the first as a guide', () => {
  const found = traceSizes(plane, guide, 3, 24, 2);

  it('are found with their corners, the shared fold kept', () => {
    expect(found.sizes).toHaveLength(2);
    expect(found.shared).toContain(3);
    found.sizes.forEach((runs, k) => {
      for (const i of [0, 1, 2, 3]) {
        expect(
          distance(pathStart(runs[i]!), pathStart(sizes[k + 1]![i]!)),
          `size ${k + 1} corner ${i}`,
        ).toBeLessThan(1.5);
      }
      for (const i of [0, 1, 2, 3]) {
        const truth = pathLength(sizes[k + 1]![i]!);
        expect(Math.abs(pathLength(runs[i]!) - truth), `size ${k + 1} run ${i}`).toBeLessThan(0.01 * truth);
      }
    });
  });

  it('become a pattern of one topology, sizes in order of girth', () => {
    const proposal = proposalFromTrace(
      'Traced skirt',
      ['40', '38', '36'],
      [{ name: 'Skirt front', runs: [found.sizes[1]!, found.sizes[0]!, guide], fold: 3 }],
    );
    expect(proposal.sizes.map((size) => size.label)).toEqual(['36', '38', '40']);
    const { pattern } = patternFrom(proposal);
    const [piece] = pattern.pieces;
    expect(piece!.edges.map((edge) => edge.kind)).toEqual(['hem', 'free', 'free', 'fold']);
    for (const edge of piece!.edges) {
      expect(new Set(edge.path.map((path) => path.length)).size).toBe(1);
    }
    const areas = [0, 1, 2].map((k) => pathsArea(piece!.edges.map((edge) => edge.path[k]!)));
    sizes.forEach((runs, k) => expect(Math.abs(areas[k]! / pathsArea(runs) - 1)).toBeLessThan(0.01));
  });

  it('are refused with the reason where they cannot be one piece', () => {
    const one = [{ name: 'Front', runs: [guide, guide.slice(1)] }];
    expect(() => proposalFromTrace('x', ['1', '2'], one)).toThrow(
      /Front has 3 runs in size 2 and 4 in size 1/,
    );
    expect(() => proposalFromTrace('x', ['1'], [{ name: 'Front', runs: [guide.slice(1)] }])).toThrow(
      /run 3 ends \d+ mm from where the next begins/,
    );
    expect(() => proposalFromTrace('x', ['1', '2'], [{ name: 'Front', runs: [guide] }])).toThrow(
      /1 of 2 sizes/,
    );
    expect(() => traceSizes(plane, guide, 3, 24, 5)).toThrow(/2 further lines are seen, not 5/);
  });
});
