import type { DrawnPiece, Mark } from '../garment/index.ts';
import { add, linePath } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { circlePath } from './circle.ts';
import type { Stroke } from './drawing.ts';

const cross = (at: Point, size: number): Path[] => [
  linePath(add(at, { x: -size, y: 0 }), add(at, { x: size, y: 0 })),
  linePath(add(at, { x: 0, y: -size }), add(at, { x: 0, y: size })),
];

function paths(mark: Mark<'one'>): { lines: Path[]; filled: Path[] } {
  const at = mark.at;
  switch (mark.kind) {
    case 'bust-point':
      return { lines: [circlePath(at, 4), ...cross(at, 6)], filled: [] };
    case 'button':
      return { lines: [circlePath(at, 3), ...cross(at, 1.5)], filled: [] };
    case 'drill':
      return { lines: cross(at, 2.5), filled: [circlePath(at, 0.8)] };
    case 'dart-point':
      return { lines: [circlePath(at, 1.8)], filled: [] };
    case 'dot':
      return { lines: [], filled: [circlePath(at, 1.6)] };
  }
}

/** The marks of a piece: bust point, dart points, dots, buttons, drill holes. */
export function markStrokes(piece: DrawnPiece): Stroke[] {
  return piece.marks.flatMap((mark) => {
    const { lines, filled } = paths(mark);
    const stroke = (path: Path, full: boolean): Stroke => ({
      layer: 'marks',
      piece: piece.id,
      path,
      filled: full,
    });
    return [...lines.map((p) => stroke(p, false)), ...filled.map((p) => stroke(p, true))];
  });
}
