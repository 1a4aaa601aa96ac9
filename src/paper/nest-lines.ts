import { pieceAt } from '../garment/index.ts';
import type { DrawnPiece, NestedPiece, Pattern } from '../garment/index.ts';
import {
  cubicCount,
  pathAt,
  pathBetween,
  pathLineIntersections,
  pathMove,
  pathStart,
} from '../geometry/index.ts';
import type { Box, Motion, Path, Point } from '../geometry/index.ts';
import type { Stroke, Words } from './drawing.ts';
import { NEST_DASHES } from './ink.ts';

/** Less than half of the white between two pieces. */
const REACH_MM = 4;

const inside = (p: Point, box: Box): boolean =>
  p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY;

/** The parts of a path inside of the box. */
function within(path: Path, box: Box): Path[] {
  if (path.every((p) => inside(p, box))) return [path];
  const corners = [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ];
  const cuts = corners
    .flatMap((p, i) => pathLineIntersections(path, p, corners[(i + 1) % 4]!).map((m) => m.place))
    .concat({ cubic: 0, t: 0 }, { cubic: cubicCount(path) - 1, t: 1 })
    .sort((a, b) => a.cubic + a.t - b.cubic - b.t);
  return cuts
    .slice(1)
    .map((to, i) => pathBetween(path, cuts[i]!, to))
    .filter((part) => inside(pathAt(part, 0.5), box) && inside(pathAt(part, 0.25), box));
}

/**
 * The other sizes of a piece, faint, each with its own dash and named where its first edge starts: the stitching lines as printed in the pattern,
 * in register with the piece drawn, as far as they stay by it (REACH_MM beyond its box), so that they never run into its neighbours.
 * `motion` is how the piece was turned for the paper.
 */
export function nestLines(
  piece: DrawnPiece,
  pattern: Pattern,
  motion: Motion,
  box: Box,
): { strokes: Stroke[]; words: Words[] } {
  const nested: NestedPiece | undefined = pieceAt(pattern, piece.id);
  if (!nested) return { strokes: [], words: [] };
  const room: Box = {
    minX: box.minX - REACH_MM,
    minY: box.minY - REACH_MM,
    maxX: box.maxX + REACH_MM,
    maxY: box.maxY + REACH_MM,
  };
  const strokes: Stroke[] = [];
  const words: Words[] = [];
  pattern.chart.sizes.forEach((size, i) => {
    const ink = { dash: NEST_DASHES[i % NEST_DASHES.length]! };
    for (const edge of nested.edges) {
      const path = edge.path[i];
      if (!path) continue;
      for (const part of within(pathMove(path, motion), room)) {
        strokes.push({ layer: 'nest', piece: piece.id, path: part, ink });
      }
    }
    const first = nested.edges.find((e) => e.kind !== 'fold' && e.kind !== 'hem')?.path[i];
    if (!first) return;
    const at = pathStart(pathMove(first, motion));
    if (!inside(at, room)) return;
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
