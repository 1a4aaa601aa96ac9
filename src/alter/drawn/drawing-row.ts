import { pathBox, pathMove } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import type { PieceDrawing } from './drawing.ts';

/** White between two pieces of a small drawing, mm. */
const GAP_MM = 45;

/** The pieces of a small drawing side by side, their tops level: x from 0 to `width`, y from 0 (top) down to −`height`, mm. */
export interface DrawingRow {
  readonly width: number;
  readonly height: number;
  readonly pieces: readonly PieceDrawing[];
}

/** Sets the pieces of `drawingOf` beside one another, each in its own place before and after. */
export function drawingRow(drawn: readonly PieceDrawing[]): DrawingRow {
  let x = 0;
  let height = 0;
  const pieces = drawn.map(({ piece, before, after }): PieceDrawing => {
    const boxes = [...before, ...after].map(pathBox);
    const left = Math.min(...boxes.map((b) => b.minX));
    const top = Math.max(...boxes.map((b) => b.maxY));
    const motion = { angle: 0, dx: x - left, dy: -top };
    const move = (paths: readonly Path[]): Path[] => paths.map((p) => pathMove(p, motion));
    x += Math.max(...boxes.map((b) => b.maxX)) - left + GAP_MM;
    height = Math.max(height, top - Math.min(...boxes.map((b) => b.minY)));
    return { piece, before: move(before), after: move(after) };
  });
  return { width: Math.max(0, x - GAP_MM), height, pieces };
}
