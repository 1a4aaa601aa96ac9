// The teeth of a notch stand one gap apart along the edge (arc length, not chord), on paper and in every file. NOTCH_GAP_MM: common practice.
import { describe, expect, it } from 'vitest';
import { NOTCH_GAP_MM } from '../src/cut/index.ts';
import { patternSheet, readDxfStyle, writeDxf } from '../src/exchange/index.ts';
import { called, garmentAtSize, t, TELL_CM } from '../src/garment/index.ts';
import { distance, lengthAtPlace, nearestPlace, pathLength, pathStart } from '../src/geometry/index.ts';
import type { Path, Point } from '../src/geometry/index.ts';
import { sheet } from '../src/paper/index.ts';
import { SAMPLES, sample } from '../src/samples/index.ts';

const lengthTo = (path: Path, foot: Point): number => lengthAtPlace(path, nearestPlace(path, foot).place);

/** mm along the edge between neighbouring feet. */
const gaps = (path: Path, feet: readonly Point[]): number[] => {
  const at = feet.map((foot) => lengthTo(path, foot));
  return at.slice(1).map((mm, i) => mm - at[i]!);
};

describe.each(SAMPLES.map(({ id }) => id))('%s', (id) => {
  const pattern = sample(id);
  const size = pattern.chart.sizes.length - 1;
  const { drawing, placement } = patternSheet(pattern, { semantics: true });
  const onSheet = (piece: string, part: string): Path[] =>
    drawing.strokes
      .filter(
        ({ belongs }) =>
          belongs?.piece === piece && belongs.size === pattern.chart.sizes[size]!.id && belongs.part === part,
      )
      .map((s) => s.path);

  it('has the teeth of its notches one gap apart along the edge, in SVG, PDF and on paper', () => {
    const figures = sheet(garmentAtSize(pattern, size), {
      title: 'Teeth',
      size: t`${called('largest')}`,
      tell: TELL_CM,
      date: '2026-01-01',
      allowances: false,
    }).figures;
    let several = 0;
    for (const piece of pattern.pieces) {
      const strokes = figures.find((f) => f.piece === piece.id)!.strokes;
      for (const edge of piece.edges) {
        const [drawn] = onSheet(piece.id, `edge:${edge.id}`);
        const printed = strokes.filter((s) => s.edge === edge.id);
        const ticks = printed.filter((s) => s.layer === 'notches').map((s) => pathStart(s.path));
        const outline = printed.find((s) => s.layer !== 'notches')!.path;
        for (const notch of edge.notches) {
          const teeth = onSheet(piece.id, `notch:${edge.id}/${notch.id}`).map(pathStart);
          const own = ticks.splice(0, notch.count);
          expect([teeth.length, own.length]).toEqual([notch.count, notch.count]);
          // Beside a corner a tooth stands at the corner.
          const reach = ((notch.count - 1) / 2) * NOTCH_GAP_MM;
          const [before, long] = [notch.at[size]! * pathLength(drawn!), pathLength(drawn!)];
          if (before < reach || long - before < reach) continue;
          for (const gap of [...gaps(drawn!, teeth), ...gaps(outline, own)]) {
            expect(gap, `${piece.id}, ${edge.id}, ${notch.id}`).toBeWithinMm(NOTCH_GAP_MM, 0.01);
            several++;
          }
        }
      }
    }
    expect(several).toBeGreaterThan(0);
  });

  it('has them at the same places in DXF', () => {
    const style = readDxfStyle(new TextEncoder().encode(writeDxf(pattern, '2026-01-01')));
    for (const piece of pattern.pieces) {
      const block = style.pieces.find(
        (p) => p.name === piece.name && p.size === pattern.chart.sizes[size]!.label,
      )!;
      const at = placement[piece.id]!;
      const feet = piece.edges.flatMap((edge) =>
        edge.notches.flatMap((notch) => onSheet(piece.id, `notch:${edge.id}/${notch.id}`).map(pathStart)),
      );
      expect(block.notches).toHaveLength(feet.length);
      feet.forEach((foot, i) => {
        const own = { x: foot.x - at.x, y: foot.y - at.y };
        expect(distance(own, block.notches[i]!), `${piece.id}, tooth ${i}`).toBeWithinMm(0, 0.01);
      });
    }
  });
});
