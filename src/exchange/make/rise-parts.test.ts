// The trousers written and read back: where their own seat seam ends and the crotch curve begins is the truth.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { linePath, pathLength } from '../../geometry/index.ts';
import { sample } from '../../samples/index.ts';
import type { Proposal } from '../find/proposal.ts';
import { readFile } from '../read-file.ts';
import { tiledPdf } from '../tiled.test-case.ts';
import { writeDxf } from '../write/dxf.ts';
import { writePatternPdf } from '../write/pdf.ts';
import { withRiseParts } from './rise-parts.ts';

const TROUSERS = sample('work-trousers');
const ON = '2026-01-01';
const DXF = readFile(new TextEncoder().encode(writeDxf(TROUSERS, ON)), 'x.dxf');
const READ: Readonly<Record<string, () => Promise<Proposal>>> = {
  'a DXF': () => DXF,
  'a PDF of one sheet': async () => readFile(await writePatternPdf(TROUSERS, ON), 'x.pdf'),
  'a tiled PDF': async () => readFile((await tiledPdf(TROUSERS, 10, 900)).bytes, 'x.pdf'),
};

/** Lengths by size of the edges of the rise on the trouser back, from the waist down. */
const lengths = ({ pieces }: Pick<Proposal, 'pieces'>): number[][] =>
  pieces
    .find((piece) => piece.name === 'Trouser back')!
    .edges.filter((edge) => edge.role === 'rise')
    .map((edge) => edge.paths.map(pathLength));

const truth = TROUSERS.pieces
  .find((piece) => piece.id === 'back')!
  .edges.filter((edge) => edge.role === 'rise')
  .map((edge) => edge.path.map(pathLength));

describe('a rise drawn as one line', () => {
  it.each(Object.keys(READ))(
    'in %s is cut within 1 mm of where the draft’s curve begins, in every size',
    async (from) => {
      const proposal = await READ[from]!();
      expect(lengths(proposal)).toHaveLength(1);
      const cut = lengths(withRiseParts(proposal, {}).proposal);
      expect(cut).toHaveLength(2);
      for (const [i, own] of cut.entries())
        for (const [k, long] of own.entries())
          expect(Math.abs(long - truth[i]![k]!), `size ${k}`).toBeLessThan(1);
    },
  );

  it('stays whole where no hip line is drawn', async () => {
    const proposal = await DXF;
    const pieces = proposal.pieces.map((piece) => ({
      ...piece,
      lines: piece.lines.filter((line) => line.level !== 'hip'),
    }));
    expect(lengths(withRiseParts({ ...proposal, pieces }, {}).proposal)).toHaveLength(1);
  });

  it('is cut in one way in all sizes: at the hip line, where in one of them the straight seam ends far from it', async () => {
    const proposal = await DXF;
    const back = proposal.pieces.find((piece) => piece.name === 'Trouser back')!;
    const level = (y: number) => linePath({ x: back.box.minX - 50, y }, { x: back.box.maxX + 50, y });
    const hip = back.lines.find((line) => line.level === 'hip')!;
    // In the middle size the hip line is drawn 80 mm lower, below where the curve begins by more than the bound.
    const paths = hip.paths.map((path, k) => level(path[0]!.y - (k === 4 ? 80 : 0)));
    const pieces = proposal.pieces.map((piece) =>
      piece === back
        ? { ...piece, lines: piece.lines.map((line) => (line === hip ? { ...line, paths } : line)) }
        : piece,
    );
    const [seat] = lengths(withRiseParts({ ...proposal, pieces }, {}).proposal);
    // The draft's curve begins 18 mm above the hip line: at the line itself the straight part is as much longer.
    for (const k of [0, 9]) expect(seat![k]! - truth[0]![k]!, `size ${k}`).toBeCloseTo(18, 0);
  });
});

describe('trousers by another hand, with a shaped waistband', () => {
  // fixtures/role-drawings/legs.py: the rise is a line from the waist to 0.7 of the body rise below it, leaning by 6 in front and 34 behind, and one curve to the fork.
  it.each([
    ['front', (drop: number) => Math.hypot(6, drop - 6), (hip: number) => 1056 - hip],
    ['back', (drop: number) => Math.hypot(34, drop + 26), (hip: number) => 56 + hip],
  ] as const)(
    'have their %s cut within 1 mm of where the curve begins, in every size',
    async (half, straight, up) => {
      const file = new URL('../fixtures/role-drawings/band-trousers.dxf', import.meta.url);
      const proposal = await readFile(new Uint8Array(readFileSync(file)), 'band-trousers.dxf');
      const pieces = proposal.pieces.map((piece) => {
        if (piece.role !== half) return piece;
        const rise = piece.edges.find((edge) => edge.role === 'rise')!;
        // No level is drawn on them: the hip line as the script has it at the side, 0.74 of the body rise below the waist.
        const paths = rise.paths.map((_, k) => {
          const y = up(0.74 * (232 + 4 * k));
          return linePath({ x: piece.box.minX, y }, { x: piece.box.maxX, y });
        });
        const hip = { ...piece.lines[0]!, kind: 'level' as const, level: 'hip' as const, paths };
        return { ...piece, lines: [...piece.lines, hip] };
      });
      const { proposal: cut } = withRiseParts({ ...proposal, pieces }, {});
      const parts = cut.pieces
        .find((piece) => piece.role === half)!
        .edges.filter((edge) => edge.role === 'rise')
        .map((edge) => edge.paths.map(pathLength));
      expect(parts).toHaveLength(2);
      const own = half === 'front' ? parts[0]! : parts[1]!;
      for (const [k, long] of own.entries())
        expect(Math.abs(long - straight(0.7 * (232 + 4 * k))), `size ${k}`).toBeLessThan(1);
    },
  );
});
