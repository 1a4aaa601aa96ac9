// Closed forms: a rectangle drawn as a cut line, its allowance taken off all round.
import { describe, expect, it } from 'vitest';
import { pathEnd, pathLength, pathStart, pathsArea } from '../../geometry/index.ts';
import { sample } from '../../samples/index.ts';
import { recognise } from '../find/recognise.ts';
import { readFile } from '../read-file.ts';
import { patternSheet } from '../write/sheet.ts';
import { patternFrom } from './pattern.ts';

/** 300 × 500 mm, notches 100 mm and 350 mm up its right side, in one size. */
const CUT = `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="600mm" viewBox="0 0 400 600">
<g fill="none" stroke="#000"><path d="M50 550H350V50H50Z"/><path d="M350 450H345"/><path d="M350 200H345"/></g>
<text x="120" y="300" font-size="12">Panel front</text></svg>`;

describe('cut lines with allowance in them', () => {
  it('become stitching lines that much further in, notches at the same height, the allowance kept outside', async () => {
    const proposal = await readFile(new TextEncoder().encode(CUT), 'cut.svg');
    const { pattern, findings } = patternFrom(proposal, { included: 15 });
    const edges = pattern.pieces[0]!.edges;
    expect(pathsArea(edges.map((edge) => edge.path[0]!))).toBeCloseTo(270 * 470, 0);
    for (const edge of edges) expect(edge.allowance).toBe(15);
    const right = edges.find((edge) => edge.name.endsWith('(right)'))!;
    expect(pathLength(right.path[0]!)).toBeWithinMm(470, 0.05);
    const foot = pathStart(right.path[0]!).y;
    expect(pathEnd(right.path[0]!).y).toBeGreaterThan(foot);
    // 100 and 350 mm from the cut edge are 85 and 335 from the stitching line's corner.
    expect(right.notches.map((notch) => notch.at[0]! * 470)).toEqual([
      expect.closeTo(85, 1),
      expect.closeTo(335, 1),
    ]);
    expect(findings.map((finding) => finding.code)).not.toContain('allowance-assumed');
  });

  it('that are left without a word are taken for stitching lines, and that is said', async () => {
    const proposal = await readFile(new TextEncoder().encode(CUT), 'cut.svg');
    const { pattern, findings } = patternFrom(proposal);
    expect(pathsArea(pattern.pieces[0]!.edges.map((edge) => edge.path[0]!))).toBeCloseTo(300 * 500, 0);
    expect(findings.map((finding) => finding.code)).toContain('allowance-assumed');
  });

  it('keep a round pocket round, and say which edge too wide an allowance eats up', async () => {
    const { drawing } = patternSheet(sample('work-trousers'), { semantics: false });
    const proposal = recognise(drawing);
    const told = (included: number) => patternFrom(proposal, { included });
    const eaten = (included: number) =>
      told(included).findings.filter((finding) => finding.code === 'allowance-too-wide');
    expect(eaten(15)).toEqual([]);
    const bag = proposal.pieces.find((piece) => piece.name === 'Pocket bag')!;
    const inner = told(15).pattern.pieces.find((piece) => piece.name === 'Pocket bag')!;
    const round = bag.edges.reduce((sum, edge) => sum + edge.lengths[0]!, 0);
    const area = pathsArea(inner.edges.map((edge) => edge.path[0]!));
    // A strip 15 mm wide all round, a little less at its corners and bends.
    expect(bag.areas[0]! - area).toBeGreaterThan(0.8 * 15 * round);
    expect(bag.areas[0]! - area).toBeLessThan(15 * round);
    expect(eaten(60).map((finding) => finding.where.piece)).toContain('trouser-back');
  });
});
