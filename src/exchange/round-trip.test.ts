// Round trips with nothing lost that the format can hold (the job's issue on bringing patterns in, item 8). ROUND_TRIP_MM is the house's own bound.
import { renderPhrase, TELL_CM, timesTurned } from '../garment/index.ts';
import { describe, expect, it } from 'vitest';
import { ROUND_TRIP_MM, pathLength, pathsArea } from '../geometry/index.ts';
import type { Pattern } from '../garment/index.ts';
import { SAMPLES, sample } from '../samples/index.ts';
import { patternFrom } from './make/pattern.ts';
import { readFile } from './read-file.ts';
import { writeDxf } from './write/dxf.ts';
import { writePatternPdf } from './write/pdf.ts';
import { writeSvg } from './write/svg.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Everything but coordinates. */
const withoutPaths = (pattern: Pattern): unknown =>
  JSON.parse(JSON.stringify(pattern, (key, value: unknown) => (key === 'path' ? null : value)));

const area = (pattern: Pattern, piece: number, size: number): number =>
  pathsArea(pattern.pieces[piece]!.edges.map((edge) => edge.path[size]!));

describe.each(SAMPLES.map(({ id }) => id))('%s', (id) => {
  const pattern = sample(id);

  it('comes back whole from its own SVG', async () => {
    const proposal = await readFile(bytes(writeSvg(pattern)), `${id}.svg`);
    const back = patternFrom(proposal).pattern;
    expect(withoutPaths(back)).toEqual(withoutPaths(pattern));
    let worst = 0;
    pattern.pieces.forEach((piece, i) =>
      piece.edges.forEach((edge, j) =>
        edge.path.forEach((path, k) => {
          path.forEach((point, n) => {
            const other = back.pieces[i]!.edges[j]!.path[k]![n]!;
            worst = Math.max(worst, Math.hypot(point.x - other.x, point.y - other.y));
          });
        }),
      ),
    );
    expect(worst).toBeLessThan(0.01);
  });

  it('comes back from PDF and DXF with every piece and size, areas and outlines within the round-trip bound', async () => {
    for (const [name, file] of [
      [`${id}.pdf`, await writePatternPdf(pattern, '2026-01-01')],
      [`${id}.dxf`, bytes(writeDxf(pattern, '2026-01-01'))],
    ] as const) {
      const proposal = await readFile(file, name);
      expect(proposal.pieces.length, name).toBe(pattern.pieces.length);
      expect(proposal.sizes.length, name).toBe(pattern.chart.sizes.length);
      pattern.pieces.forEach((piece, i) => {
        const found = proposal.pieces.find((one) => one.name === piece.name);
        expect(found, `${name}: ${piece.name}`).toBeDefined();
        for (const k of [0, pattern.chart.sizes.length - 1]) {
          const round = piece.edges.reduce((sum, edge) => sum + pathLength(edge.path[k]!), 0);
          // An outline everywhere off by the bound would be off by bound × length in area.
          expect(Math.abs(found!.areas[k]! - area(pattern, i, k)), `${name}: ${piece.name}`).toBeLessThan(
            ROUND_TRIP_MM * round,
          );
          expect(
            found!.edges.reduce((sum, edge) => sum + edge.lengths[k]!, 0),
            `${name}: ${piece.name}`,
          ).toBeWithinMm(round, ROUND_TRIP_MM * piece.edges.length);
        }
      });
    }
  });

  it('makes a valid pattern of what was read without semantics, with grain upright and the first-choice seams', async () => {
    const proposal = await readFile(await writePatternPdf(pattern, '2026-01-01'), `${id}.pdf`);
    const { pattern: made, findings } = patternFrom(proposal, { name: 'Read back' });
    expect(made.pieces.map((piece) => piece.name)).toEqual(proposal.pieces.map((piece) => piece.name));
    expect(made.seams.length).toBe(proposal.seams.filter((seam) => seam.rank === 1).length);
    expect(findings.map((finding) => finding.code)).toContain('lines-by-file');
    for (const piece of pattern.pieces) {
      const found = proposal.pieces.find((one) => one.name === piece.name)!;
      expect(found.cut, piece.name).toEqual({
        count: piece.worn.length,
        mirrored: timesTurned(piece) > 0,
      });
      if (piece.lines.some((line) => line.kind === 'grain'))
        expect(renderPhrase(found.grain.evidence, TELL_CM), piece.name).toBe('a line with arrow heads');
    }
    for (const piece of made.pieces)
      for (const k of [0, made.chart.sizes.length - 1])
        expect(pathsArea(piece.edges.map((edge) => edge.path[k]!))).toBeGreaterThan(0);
  });
});
