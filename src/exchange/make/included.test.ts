// Closed forms: a rectangle drawn as a cut line, its allowance taken off all round.
import { describe, expect, it } from 'vitest';
import { pathEnd, pathLength, pathStart, pathsArea } from '../../geometry/index.ts';
import { readFile } from '../read-file.ts';
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
    const right = edges.find((edge) => edge.name === 'right side')!;
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
});
