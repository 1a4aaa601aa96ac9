// Closed forms: rectangles with darts of known mouth and depth drawn as a V inside.
import { describe, expect, it } from 'vitest';
import { pathLength, pathsArea } from '../../geometry/index.ts';
import { patternFrom } from '../make/pattern.ts';
import { readFile } from '../read-file.ts';

/** Two sizes, told by colour. The dart opens at the top, its mouth 24 mm, 100 mm deep; a second one 20 mm wide and 80 mm deep at the right side. */
const sheet = (dart: (k: number) => string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="500mm" height="600mm" viewBox="0 0 500 600"><g fill="none">${[
    0, 1,
  ]
    .map((k) => {
      const right = 350 + 10 * k;
      return `<g stroke="${k ? '#00f' : '#f00'}"><path d="M50 550H${right}V50H50Z"/>${dart(k)}<path d="M${right} 330L${right - 80} 340L${right} 350"/></g>`;
    })
    .join('')}</g><text x="100" y="400" font-size="12">Skirt front</text></svg>`;

describe('darts drawn inside', () => {
  it.each([
    ['one line', (): string => '<path d="M188 50L200 150L212 50"/>'],
    ['two lines', (): string => '<path d="M188 50L200 150"/><path d="M200 150L212 50"/>'],
  ] as const)('as %s become part of the outline in every size', async (_, dart) => {
    const proposal = await readFile(new TextEncoder().encode(sheet(dart)), 'darts.svg');
    const { pattern } = patternFrom(proposal);
    const piece = pattern.pieces[0]!;
    expect(piece.darts).toHaveLength(2);
    const edge = (id: string) => piece.edges.find((one) => one.id === id)!;
    const legs = piece.darts.map((one) => one.legs.map((id) => pathLength(edge(id).path[0]!)));
    for (const leg of legs.flat()) {
      expect([Math.hypot(12, 100), Math.hypot(10, 80)].some((true_) => Math.abs(leg - true_) < 0.05)).toBe(
        true,
      );
    }
    [300, 310].forEach((wide, k) =>
      expect(pathsArea(piece.edges.map((one) => one.path[k]!))).toBeCloseTo(
        wide * 500 - 12 * 100 - 10 * 80,
        0,
      ),
    );
    expect(pattern.seams.filter((seam) => /dart/.test(seam.name))).toHaveLength(2);
    expect(piece.lines.filter((line) => line.kind === 'placement')).toEqual([]);
  });

  it('are left as lines where they do not stand on the outline', async () => {
    const proposal = await readFile(
      new TextEncoder().encode(sheet(() => '<path d="M188 90L200 190L212 90"/>')),
      'darts.svg',
    );
    expect(proposal.pieces[0]!.darts).toHaveLength(1);
  });
});
