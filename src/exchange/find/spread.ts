import { boxAround, pathMove, pointsBox } from '../../geometry/index.ts';
import type { Box, Point } from '../../geometry/index.ts';
import type { Drawing } from '../drawing/drawing.ts';

const GAP_MM = 40;
const WIDE_MM = 2500;

/** Files with one block per piece draw them all about one origin. Lays the pieces side by side, all sizes of one together, so that a picture shows them. */
export function spreadPieces(sheet: Drawing): Drawing {
  const boxes = new Map<string, Box>();
  for (const { belongs, path } of sheet.strokes) {
    if (belongs?.piece === undefined) return sheet;
    const own = pointsBox(path);
    const known = boxes.get(belongs.piece);
    boxes.set(belongs.piece, known ? boxAround([known, own]) : own);
  }
  const shift = new Map<string, Point>();
  let x = 0;
  let y = 0;
  let high = 0;
  let width = 0;
  for (const [piece, box] of boxes) {
    const wide = box.maxX - box.minX;
    if (x > 0 && x + wide > WIDE_MM) {
      x = 0;
      y += high + GAP_MM;
      high = 0;
    }
    shift.set(piece, { x: x - box.minX, y: y - box.minY });
    high = Math.max(high, box.maxY - box.minY);
    x += wide + GAP_MM;
    width = Math.max(width, x);
  }
  const by = (piece: string | undefined): Point => shift.get(piece ?? '') ?? { x: 0, y: 0 };
  return {
    ...sheet,
    pages: [{ number: 1, width, height: y + high }],
    strokes: sheet.strokes.map((stroke) => {
      const { x: dx, y: dy } = by(stroke.belongs?.piece);
      return { ...stroke, path: pathMove(stroke.path, { angle: 0, dx, dy }) };
    }),
    texts: sheet.texts.map((text) => {
      const { x: dx, y: dy } = by(text.belongs?.piece);
      return { ...text, at: { x: text.at.x + dx, y: text.at.y + dy } };
    }),
  };
}
