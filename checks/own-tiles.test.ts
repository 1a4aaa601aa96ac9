// Our own printed tiles (src/paper) read back by src/exchange: pages found in place by their lines and labels, every stitching line
// the same area as in the pattern within the house's round-trip bound. The two rooms do not know one another.
import { describe, expect, it } from 'vitest';
import { findAssembly, readPdf, recognise } from '../src/exchange/index.ts';
import { called, garmentAtSize, t, TELL_CM } from '../src/garment/index.ts';
import { ROUND_TRIP_MM, pathLength, pathsArea } from '../src/geometry/index.ts';
import { pdf, printPages, readPaper } from '../src/paper/index.ts';
import { sample } from '../src/samples/index.ts';

describe('our own A4 tiles', () => {
  it.each([
    ['a-line-skirt', false],
    ['a-line-skirt', true],
  ] as const)('of %s, allowances drawn: %s', async (id, allowances) => {
    const pattern = sample(id);
    const k = 4;
    const choices = {
      title: pattern.name,
      size: t`${called(pattern.chart.sizes[k]!.label)}`,
      tell: TELL_CM,
      date: '2026-01-01',
      allowances,
    };
    const { pages } = printPages(garmentAtSize(pattern, k), choices, readPaper('A4'));
    const { bytes } = await pdf(pages, choices);
    const drawing = await readPdf(bytes, { name: 'tiles.pdf' });
    const assembly = findAssembly(drawing);
    expect(assembly.overlap.x).toBeCloseTo(10, 2);
    expect(assembly.overlap.y).toBeCloseTo(10, 2);
    // The first page is the map: it joins nothing.
    expect(assembly.apart).toEqual([0]);
    const proposal = recognise(drawing);
    expect(proposal.scale.proven).toBe(true);
    expect(proposal.pieces.map((piece) => piece.name).toSorted()).toEqual(
      pattern.pieces.map((piece) => piece.name).toSorted(),
    );
    for (const piece of pattern.pieces) {
      const paths = piece.edges.map((edge) => edge.path[k]!);
      const round = paths.reduce((sum, path) => sum + pathLength(path), 0);
      const found = proposal.pieces.find((one) => one.name === piece.name)!;
      expect(Math.abs(found.areas[0]! - pathsArea(paths)), piece.name).toBeLessThan(ROUND_TRIP_MM * round);
    }
  });
});
