import type { DrawnPiece, NestedPiece, Pattern } from '../garment/index.ts';
import { pathMove, pathStart } from '../geometry/index.ts';
import type { Motion } from '../geometry/index.ts';
import type { Stroke, Words } from './drawing.ts';
import { NEST_DASHES } from './ink.ts';

/**
 * The other sizes of a piece, faint, each with its own dash and named where its first edge starts: the stitching lines as printed in the pattern,
 * in register with the piece drawn. `motion` is how the piece was turned for the paper.
 */
export function nestLines(
  piece: DrawnPiece,
  pattern: Pattern,
  motion: Motion,
): { strokes: Stroke[]; words: Words[] } {
  const nested: NestedPiece | undefined = pattern.pieces.find((p) => p.id === piece.id);
  if (!nested) return { strokes: [], words: [] };
  const strokes: Stroke[] = [];
  const words: Words[] = [];
  pattern.chart.sizes.forEach((size, i) => {
    const ink = { dash: NEST_DASHES[i % NEST_DASHES.length]! };
    for (const edge of nested.edges) {
      const path = edge.path[i];
      if (path) strokes.push({ layer: 'nest', piece: piece.id, path: pathMove(path, motion), ink });
    }
    const first = nested.edges.find((e) => e.kind !== 'fold' && e.kind !== 'hem')?.path[i];
    if (!first) return;
    const at = pathStart(pathMove(first, motion));
    words.push({
      layer: 'nest',
      piece: piece.id,
      text: size.id,
      size: 1.8,
      angle: 0,
      align: 'start',
      grey: 0.45,
      at: { x: at.x + 0.6, y: at.y + 0.6 },
    });
  });
  return { strokes, words };
}
