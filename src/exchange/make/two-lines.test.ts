// Closed form: a rectangle of two sizes, each with its stitching line dashed inside it: 15 mm at the sides and the top, 20 mm at the hem.
import { renderPhrase, TELL_CM } from '../../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { pathsArea } from '../../geometry/index.ts';
import { drawingTruth, readRoleDrawing } from '../role-drawings.test-case.ts';
import { readFile } from '../read-file.ts';
import { patternFrom } from './pattern.ts';

const box = (left: number, top: number, right: number, foot: number): string =>
  `M${left} ${foot}H${right}V${top}H${left}Z`;
const SHEET = `<svg xmlns="http://www.w3.org/2000/svg" width="500mm" height="700mm" viewBox="0 0 500 700">
<g fill="none"><g stroke="#000"><path d="${box(50, 50, 350, 550)}"/><path stroke-dasharray="6 3" d="${box(65, 65, 335, 530)}"/></g>
<g stroke="#c00"><path d="${box(50, 40, 380, 560)}"/><path stroke-dasharray="6 3" d="${box(65, 55, 365, 540)}"/></g></g>
<text x="120" y="300" font-size="12">Panel front</text></svg>`;

describe('stitching lines drawn inside cutting lines', () => {
  it('are no sizes, say how wide each allowance is, and become the outline', async () => {
    const proposal = await readFile(new TextEncoder().encode(SHEET), 'two.svg');
    expect(proposal.sizes).toHaveLength(2);
    expect(proposal.asks.included.offered).toBe(15);
    expect(renderPhrase(proposal.asks.included.evidence, TELL_CM)).toContain('two kinds of line');
    const { edges } = patternFrom(proposal, {}).pattern.pieces[0]!;
    expect(edges.map((edge) => edge.allowance).toSorted((a, b) => a - b)).toEqual([15, 15, 15, 20]);
    const area = (k: number) => pathsArea(edges.map((edge) => edge.path[k]!));
    expect([area(0), area(1)]).toEqual([expect.closeTo(270 * 465, 0), expect.closeTo(300 * 485, 0)]);
  });

  it('give way to a width that a person says', async () => {
    const proposal = await readFile(new TextEncoder().encode(SHEET), 'two.svg');
    const { edges } = patternFrom(proposal, { included: 10 }).pattern.pieces[0]!;
    expect(edges.map((edge) => edge.allowance)).toEqual([10, 10, 10, 10]);
    expect(pathsArea(edges.map((edge) => edge.path[0]!))).toBeCloseTo(280 * 480, 0);
  });

  // Truth: fixtures/role-drawings/make.py draws the wrap dress with both lines, 15 mm apart, 30 mm along the hems of its skirt, one along folds.
  it('of a whole dress say its allowances edge by edge', async () => {
    const { proposal } = await readRoleDrawing('wrap-dress');
    expect(proposal.asks.included.offered).toBe(drawingTruth('wrap-dress').allowance);
    const inside = (name: string) =>
      proposal.pieces.find((piece) => piece.name === name)!.edges.map((edge) => edge.inside);
    expect(inside('CORSAGE DEVANT')).toEqual([15, 15, 15, 15, 15]);
    expect(inside('JUPE DEVANT')).toEqual([30, 15, 15, 15]);
    expect(inside('JUPE DOS')).toEqual([30, 0, 15, 15]);
  });
});
